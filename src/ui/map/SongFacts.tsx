import type { Section } from '../../core/song/song.ts';
import { setNotes } from '../../state/edits/song.ts';
import { useParts } from '../parts/tool/parts.ts';
import { useProject } from '../parts/tool/useProject.ts';
import { KeyFields } from './KeyFields.tsx';
import { TransposeButton } from './key/TransposeButton.tsx';
import { SongLength } from './SongLength.tsx';
import { Templates } from './Templates.tsx';
import { TempoFields } from './TempoFields.tsx';

function Notes() {
  const { store } = useParts();
  const notes = useProject((project) => project.song.notes);
  return (
    <label className="field">
      <span>Notes</span>
      <textarea
        className="songmap-notes"
        rows={3}
        value={notes}
        onChange={(event) =>
          store.edit(setNotes(event.target.value), { label: 'notes', gesture: 'notes' })
        }
      />
    </label>
  );
}

/** The song as a whole: how much there is to learn, key, tempo, remarks; `section` is the one that can be timed. */
export function SongFacts({ section }: { readonly section: Section }) {
  return (
    <section className="songmap-side-part" aria-label="The song">
      <h3>The song</h3>
      <SongLength />
      <KeyFields />
      <TransposeButton />
      <TempoFields section={section} />
      <Templates />
      <Notes />
    </section>
  );
}
