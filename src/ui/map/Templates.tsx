import { FORM_TEMPLATES, type FormTemplate } from '../../core/song/templates.ts';
import { addTemplate, startFromTemplate } from '../../state/edits/templates.ts';
import { useParts } from '../parts/tool/parts.ts';

/** The usual forms: added to the song, or put in place of its own. */
export function Templates() {
  const { store, view } = useParts();
  const forget = () => view.set({ sectionId: undefined, range: undefined });
  const start = (template: FormTemplate) => {
    const { tonic } = store.snapshot().song.key;
    store.edit(startFromTemplate(template, tonic), { label: `start from ${template.name}` });
    forget();
  };
  const add = (template: FormTemplate) => {
    store.edit(addTemplate(template), { label: `add ${template.name}` });
    view.set({ range: undefined });
  };
  return (
    <details className="songmap-more">
      <summary>Usual forms</summary>
      <p className="hint">
        In place of this song’s sections, or added at the end. Undo brings them back.
      </p>
      <ul className="songmap-templates">
        {FORM_TEMPLATES.map((template) => (
          <li key={template.name}>
            <span>{template.name}</span>
            <button
              type="button"
              aria-label={`Start from ${template.name}`}
              onClick={() => start(template)}
            >
              Start
            </button>
            <button type="button" aria-label={`Add ${template.name}`} onClick={() => add(template)}>
              Add
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
