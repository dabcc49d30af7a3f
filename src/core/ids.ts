/** Identities, kept apart by type; the text inside means nothing. */
declare const idKind: unique symbol;

type Id<Kind extends string> = string & { readonly [idKind]?: Kind };

export type PatternId = Id<'pattern'>;
export type SectionId = Id<'section'>;
export type FormEntryId = Id<'form entry'>;
