import type { VoicingSettings } from '../../core/voicing/voicing.ts';
import { type Edit, withParts } from './edit.ts';

/** Changes some of what the hands may do; the rest stays. */
export function setVoicing(parts: Partial<VoicingSettings>): Edit {
  return (project) => withParts(project, { voicing: { ...project.voicing, ...parts } });
}
