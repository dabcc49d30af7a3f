/**
 * A part of a project that does not fit the others, with its place, as `song.form[2].sectionId`.
 * - `nothing-left`: no section or no pattern is there, and one must be
 * - `same-id`: an earlier one in the list has this id
 * - `not-there`: the section or pattern that is named does not exist
 * - `bars-not-filled`: the chords end inside a bar
 * - `too-many-bars`: a section, or the song as it is played, has more than `MOST_BARS`
 * - `out-of-order`: bars, changes of the pattern, hits or strokes do not ascend, or two stand at one place
 * - `too-long`: a hit or stroke lasts beyond the next one, the last beyond the first of the next round
 * - `outside`: a hit or stroke begins behind the pattern's end
 * - `divisions-do-not-fit`: there is not one division for each felt beat
 */
export type ProjectFault = {
  readonly kind:
    | 'nothing-left'
    | 'same-id'
    | 'not-there'
    | 'bars-not-filled'
    | 'too-many-bars'
    | 'out-of-order'
    | 'too-long'
    | 'outside'
    | 'divisions-do-not-fit';
  readonly path: string;
};

/** Faults of a list whose items have ids: each id that an earlier item has. */
export function sameIdFaults(
  items: readonly { readonly id: string }[],
  path: string,
): ProjectFault[] {
  const ids = items.map((item) => item.id);
  return ids.flatMap((id, i) =>
    ids.indexOf(id) === i ? [] : [{ kind: 'same-id' as const, path: `${path}[${i}].id` }],
  );
}
