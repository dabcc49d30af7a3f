import * as v from 'valibot';
import { expect, expectTypeOf, it } from 'vitest';
import type { Project } from '../../src/core/project.ts';
import { projectSchema } from '../../src/formats/projectSchema.ts';
import { project } from '../support/project.ts';

/** A type written out: no intersections left, ids as the texts they are, everything readonly. */
type Plain<T> = T extends string
  ? string extends T
    ? string
    : T
  : T extends readonly (infer Item)[]
    ? readonly Plain<Item>[]
    : T extends object
      ? { readonly [K in keyof T]: Plain<T[K]> }
      : T;

it('knows every property of a project, and no other, by type', () =>
  expectTypeOf<Plain<v.InferOutput<typeof projectSchema>>>().toEqualTypeOf<Plain<Project>>());

it('reads a project as it is', () =>
  expect(v.safeParse(projectSchema, project())).toMatchObject({
    success: true,
    output: project(),
  }));
