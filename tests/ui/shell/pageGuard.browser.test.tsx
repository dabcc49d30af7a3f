import { createRoot } from 'react-dom/client';
import { expect, it } from 'vitest';
import { page } from 'vitest/browser';
import { PageGuard } from '../../../src/ui/shell/PageGuard.tsx';

/** A page that cannot be drawn while the song has its last change. */
function brokenPage() {
  let isChanged = true;
  function Page() {
    if (isChanged) throw new Error('a change too many');
    return <p>The page</p>;
  }
  const undo = () => {
    isChanged = false;
  };
  return { Page, undo };
}

it('says that a page cannot be drawn, and draws it once the last change is taken back', async () => {
  const { Page, undo } = brokenPage();
  const place = document.createElement('div');
  document.body.replaceChildren(place);
  const root = createRoot(place, { onCaughtError: () => undefined });
  root.render(
    <PageGuard onUndo={undo}>
      <Page />
    </PageGuard>,
  );
  await expect.element(page.getByRole('alert')).toHaveTextContent('Your song is safe');
  await page.getByRole('button', { name: 'Draw it again' }).click();
  await expect.element(page.getByRole('alert')).toBeVisible();
  await page.getByRole('button', { name: 'Undo the last change' }).click();
  await expect.element(page.getByText('The page')).toBeVisible();
  root.unmount();
});
