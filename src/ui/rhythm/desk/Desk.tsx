import '../../parts/picture/desk.css';
import './tapping.css';
import '../../parts/picture/songPanel.css';
import './fills.css';
import '../../parts/picture/workshop.css';
import type { RefObject } from 'react';
import { unreachable } from '../../../core/result.ts';
import type { Level } from '../../../core/rhythm/levels.ts';
import type { Pattern } from '../../../core/rhythm/pattern.ts';
import type { Scope } from '../../../state/edits/hits.ts';
import type { Chosen, Place } from '../../parts/grid/gridPlace.ts';
import { ChangePanel } from './ChangePanel.tsx';
import { ChoicePanel, GridKeys } from './ChoicePanel.tsx';
import { DESK_PANEL, type DeskTab, DeskTabs } from './DeskTabs.tsx';
import { EndingPanel } from './EndingPanel.tsx';
import { LevelsPanel } from './LevelsPanel.tsx';
import { NumbersPanel } from './NumbersPanel.tsx';
import { SayPanel } from './SayPanel.tsx';
import { SongPanel } from './SongPanel.tsx';
import { TapPanel } from './TapPanel.tsx';
import type { LevelChoice } from './useLevels.ts';

type Props = {
  readonly pattern: Pattern;
  readonly scope: Scope;
  /** What of the pattern is shown: see `shownPattern`. */
  readonly shown: Pattern;
  /** Where the cursor is, and what stands there. */
  readonly place: Place | undefined;
  readonly chosen: Chosen | undefined;
  /** Undefined where the levels are not looked at. */
  readonly levels: LevelChoice | undefined;
  readonly tab: DeskTab;
  readonly panel: RefObject<HTMLDivElement | null>;
  readonly onTab: (tab: DeskTab) => void;
  readonly onScope: (scope: Scope) => void;
  readonly onLevel: (level: Level | undefined) => void;
  readonly onPlace: (place: Place) => void;
  /** Escape: back to the place in the grid. */
  readonly onLeave: () => void;
};

function Panel(props: Props) {
  const { tab, pattern, scope, shown, place, chosen, levels } = props;
  const { onScope, onLevel, onPlace } = props;
  switch (tab) {
    case 'hit':
      return <ChoicePanel {...{ pattern, scope, shown, chosen, onPlace }} />;
    case 'change':
      return <ChangePanel {...{ pattern, scope, shown, place }} />;
    case 'ending':
      return <EndingPanel {...{ pattern, onScope }} />;
    case 'levels':
      return levels ? <LevelsPanel {...{ pattern, shown, levels, onLevel }} /> : null;
    case 'say':
      return <SayPanel pattern={pattern} />;
    case 'tap':
      return <TapPanel pattern={pattern} />;
    case 'numbers':
      return <NumbersPanel shown={shown} />;
    case 'song':
      return <SongPanel pattern={pattern} />;
    default:
      return unreachable(tab);
  }
}

/** The desk under the spine: what can be done with the chosen hit and with the whole pattern, one thing at a time. */
export function Desk(props: Props) {
  const { tab, panel, onTab, onLeave } = props;
  return (
    <div
      role="presentation"
      className="desk"
      onKeyDown={(event) => {
        if (event.key === 'Escape') onLeave();
      }}
    >
      <div className="desk-head">
        <DeskTabs tab={tab} onTab={onTab} />
        <GridKeys />
      </div>
      <div
        ref={panel}
        role="tabpanel"
        id={DESK_PANEL}
        aria-labelledby={`${DESK_PANEL}-${tab}`}
        className="desk-panel"
      >
        <Panel {...props} />
      </div>
    </div>
  );
}
