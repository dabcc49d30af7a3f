import { useState } from 'react';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import { sameMeter } from '../../../core/time/meter.ts';
import { usePatternActions } from '../../parts/pattern/usePatterns.ts';
import { useProject } from '../../parts/tool/useProject.ts';

/** What a proposed pattern will be called and which section will play it, and the button that takes it. */
export function TakePattern({
  pattern,
  name,
  onDone,
}: {
  readonly pattern: Pattern;
  /** What it is called unless the player says otherwise. */
  readonly name: string;
  readonly onDone: () => void;
}) {
  const { add } = usePatternActions();
  const [typed, setTyped] = useState<string>();
  const [place, setPlace] = useState('');
  const sections = useProject(({ song }) => song.sections);
  const fitting = sections.filter(({ meter }) => sameMeter(meter, pattern.meter));
  const take = () => {
    add({ ...pattern, name: typed?.trim() || name }, 'pattern from a band', place || undefined);
    onDone();
  };
  return (
    <div className="band-take">
      <label>
        <span>Called</span>
        <input
          type="text"
          value={typed ?? name}
          onChange={({ target }) => setTyped(target.value)}
        />
      </label>
      <label>
        <span>Played in</span>
        <select value={place} onChange={({ target }) => setPlace(target.value)}>
          <option value="">nothing yet</option>
          {fitting.map((section) => (
            <option key={section.id} value={section.id}>
              {section.name}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className="strong" onClick={take}>
        Take this pattern
      </button>
    </div>
  );
}
