import type { Project } from '../../core/project.ts';
import { arrangedProject } from '../../state/arrangement.ts';
import { useProject, useView } from '../parts/tool/useProject.ts';

/** What `selector` reads from the song as it is played now: in its key, at its level. */
export function useArranged<T>(selector: (project: Project) => T): T {
  const arrangement = useView((state) => state.arrangement);
  return useProject((project) => selector(arrangedProject(project, arrangement)));
}
