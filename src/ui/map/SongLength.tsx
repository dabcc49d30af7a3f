import { useMemo } from 'react';
import { uniqueMusic } from '../../core/song/form.ts';
import { barCount, clockText } from '../parts/song/songWords.ts';
import { useProject } from '../parts/tool/useProject.ts';

/** How long the song is, and how little of it is different music to learn. */
export function SongLength() {
  const song = useProject((project) => project.song);
  const { sections, form, tempo } = song;
  const music = useMemo(() => uniqueMusic({ sections, form, tempo }), [sections, form, tempo]);
  return (
    <div className="songmap-length">
      <p>
        Unique music <strong>{clockText(music.different.seconds)}</strong> of{' '}
        {clockText(music.whole.seconds)}
      </p>
      <p className="hint">
        {music.different.bars} of {barCount(music.whole.bars)} to learn
      </p>
      <ul>
        {music.sections.map((section) => (
          <li key={section.sectionId}>
            {section.name}
            <span>
              {section.playings > 1 && `${section.playings} × `}
              {barCount(section.bars)}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
