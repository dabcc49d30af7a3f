/** Outlines on a 24 × 24 field, drawn for this sheet. */
const OUTLINES = {
  play: 'M7 4.5v15l12.5-7.5z',
  stop: 'M6 6h12v12H6z',
  undo: 'M8.5 5.5 4.5 9.5l4 4M4.5 9.5h9a5.5 5.5 0 0 1 0 11H10',
  redo: 'M15.5 5.5l4 4-4 4M19.5 9.5h-9a5.5 5.5 0 0 0 0 11H14',
  lamp: 'M12 3.5a6 6 0 0 0-3.4 10.9c.6.5.9 1.1.9 1.8V17h5v-.8c0-.7.3-1.3.9-1.8A6 6 0 0 0 12 3.5zM10 20.5h4',
  songs: 'M8 3.5h11.5v14H8zM5 7v13.5h11.5M11 7.5h5.5M11 11h5.5',
  keys: 'M3.5 6.5h17v11h-17zM8 6.5v6.5M12 6.5v6.5M16 6.5v6.5M8 17.5V13M12 17.5V13M16 17.5V13',
  cross: 'M6 6l12 12M18 6 6 18',
  plus: 'M12 5v14M5 12h14',
  minus: 'M5 12h14',
  left: 'M14.5 5.5 8 12l6.5 6.5',
  right: 'M9.5 5.5 16 12l-6.5 6.5',
} as const;

export type IconName = keyof typeof OUTLINES;

/** A drawing beside or instead of a label; it is never read out, so its button carries the words. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={OUTLINES[name]} />
    </svg>
  );
}
