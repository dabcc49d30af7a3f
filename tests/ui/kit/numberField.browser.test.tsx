import { createRoot, type Root } from 'react-dom/client';
import { afterEach, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { NumberField } from '../../../src/ui/kit/NumberField.tsx';

let root: Root | undefined;

afterEach(() => root?.unmount());

it('says between which limits a number lies while what is typed lies outside, and takes what is inside', async () => {
  const taken: number[] = [];
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  root = createRoot(place);
  root.render(
    <NumberField
      label="To"
      value={60}
      lowest={20}
      highest={320}
      onChange={(value) => taken.push(value)}
    />,
  );
  const field = page.getByRole('spinbutton', { name: 'To' });
  await field.fill('1000');
  await expect.element(page.getByText('20 to 320')).toBeVisible();
  await expect.element(field).toHaveAccessibleDescription('20 to 320');
  await field.fill('100');
  await expect.element(page.getByText('20 to 320')).not.toBeInTheDocument();
  expect(taken).toEqual([100]);
});
