import { type KeyboardEvent, useEffect, useRef, useState } from 'react';

/** How the editor was left: where the focus goes then. */
export type Leaving = 'stay' | 'next' | 'before' | 'elsewhere';

/**
 * The field in which a chord is typed, over its cell. `commit` writes what was typed and answers with
 * a sentence where it can't; the text then stays until it is repaired or Escape throws it away.
 */
export function CellEditor({
  label,
  written,
  typed,
  commit,
  onLeave,
}: {
  readonly label: string;
  /** The text that stands in the cell. */
  readonly written: string;
  /** The first key of a new text, which replaces it. */
  readonly typed: string | undefined;
  readonly commit: (text: string) => string | undefined;
  readonly onLeave: (leaving: Leaving) => void;
}) {
  const field = useRef<HTMLInputElement>(null);
  const isDone = useRef(false);
  const [problem, setProblem] = useState<string>();

  useEffect(() => {
    field.current?.focus();
    if (typed === undefined) field.current?.select();
  }, [typed]);

  const leave = (leaving: Leaving) => {
    const text = field.current?.value ?? written;
    const sentence = text === written ? undefined : commit(text);
    setProblem(sentence);
    if (sentence !== undefined) return;
    isDone.current = true;
    onLeave(leaving);
  };

  const press = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key === 'Enter') leave('stay');
    else if (event.key === 'Tab') leave(event.shiftKey ? 'before' : 'next');
    else if (event.key === 'Escape') {
      isDone.current = true;
      onLeave('stay');
    } else return;
    event.preventDefault();
  };

  return (
    <span className="chart-editor">
      <input
        ref={field}
        type="text"
        className="chart-field"
        aria-label={label}
        aria-invalid={problem !== undefined}
        aria-describedby="chart-cell-problem"
        autoComplete="off"
        autoCapitalize="off"
        autoCorrect="off"
        spellCheck={false}
        defaultValue={typed ?? written}
        onKeyDown={press}
        onBlur={() => !isDone.current && leave('elsewhere')}
      />
      <span id="chart-cell-problem" role="status">
        {problem !== undefined && <span className="chart-problem">{problem}</span>}
      </span>
    </span>
  );
}
