import { useEffect, useState } from 'react';
import { setClick } from '../state/edits/practice.ts';
import type { KeyCommand } from './keyBindings.ts';
import { HandsPage } from './keyboard/HandsPage.tsx';
import { keepMarksInPlace } from './marksInPlace.ts';
import { type Parts, PartsContext, useParts } from './parts.ts';
import { RhythmPage } from './patternGrid/RhythmPage.tsx';
import { playRequestOf } from './playRequest.ts';
import { changeTempo } from './practice/changeTempo.ts';
import { DrillPage } from './practice/DrillPage.tsx';
import { goToRungBeside, keepStageInView } from './practice/goToRung.ts';
import { goToSectionBeside } from './practice/goToSection.ts';
import { PlanClock } from './practice/PlanClock.tsx';
import { PlayPage } from './practice/PlayPage.tsx';
import { rungAgain } from './practice/rungAgain.ts';
import { Foot } from './shell/Foot.tsx';
import { Head } from './shell/Head.tsx';
import { KeysAndCautions } from './shell/KeysAndCautions.tsx';
import { Message } from './shell/Message.tsx';
import { PageGuard } from './shell/PageGuard.tsx';
import { RestReminder } from './shell/RestReminder.tsx';
import { MapPage } from './songMap/MapPage.tsx';
import { SongsSheet } from './songs/SongsSheet.tsx';
import { commandOfTaught } from './taughtCommand.ts';
import { useFocusLetGo } from './useFocusLetGo.ts';
import { useKeys } from './useKeys.ts';
import { usePlayback, useView } from './useProject.ts';
import { useWakeLock } from './useWakeLock.ts';
import { mixLevels, type Page, type Theme } from './viewState.ts';

const PAGE_VIEWS: Readonly<Record<Page, () => React.JSX.Element>> = {
  map: MapPage,
  hands: HandsPage,
  rhythm: RhythmPage,
  drill: DrillPage,
  play: PlayPage,
};

const DARK = '(prefers-color-scheme: dark)';

function useTheme(): Theme {
  const chosen = useView((state) => state.theme);
  const [isDark, setDark] = useState(() => matchMedia(DARK).matches);
  useEffect(() => {
    const query = matchMedia(DARK);
    const change = () => setDark(query.matches);
    query.addEventListener('change', change);
    return () => query.removeEventListener('change', change);
  }, []);
  if (chosen !== 'as the device') return chosen;
  return isDark ? 'stage' : 'paper';
}

/** What each key command does, by kind. */
function carryOut(command: KeyCommand, parts: Parts): void {
  const { store, playback, view } = parts;
  switch (command.kind) {
    case 'play-or-stop':
      if (playback.state().status === 'stopped') void playback.play(playRequestOf(store, view));
      else playback.stop();
      break;
    case 'undo':
      store.undo();
      break;
    case 'redo':
      store.redo();
      break;
    case 'page':
      view.set({ page: command.page });
      break;
    case 'slower':
      changeTempo(parts, -1);
      break;
    case 'faster':
      changeTempo(parts, 1);
      break;
    case 'rung':
      if (command.by === 0) rungAgain(parts);
      else goToRungBeside(parts, command.by);
      break;
    case 'section':
      goToSectionBeside(parts, command.by);
      break;
    case 'click': {
      const { click } = store.snapshot().practice;
      store.edit(setClick({ on: !click.on }), { label: 'click' });
      break;
    }
  }
}

/** Carries out what the instrument was taught, on whichever page, and asks for MIDI once anything is. */
function useTaught(isOn: boolean): void {
  const parts = useParts();
  const { midi, playback, view } = parts;
  const isTaught = useView((state) => Object.keys(state.taught).length > 0);
  useEffect(() => {
    if (isTaught) void midi.open();
  }, [midi, isTaught]);
  useEffect(() => {
    if (!isOn) return undefined;
    return midi.onCommand((taught) => {
      const command = commandOfTaught(taught, playback.state(), view.snapshot().page);
      if (command) carryOut(command, parts);
    });
  }, [parts, midi, playback, view, isOn]);
}

/** What is typed or dragged in a field is one change until the field is left. */
function useGestureEnds(): void {
  const { store } = useParts();
  useEffect(() => {
    addEventListener('focusout', store.endGesture);
    return () => removeEventListener('focusout', store.endGesture);
  }, [store]);
}

/** A file that is dropped beside the places for files must not make the browser leave the song for it. */
function useDropGuard(): void {
  useEffect(() => {
    const guard = (event: DragEvent) => event.preventDefault();
    addEventListener('dragover', guard);
    addEventListener('drop', guard);
    return () => {
      removeEventListener('dragover', guard);
      removeEventListener('drop', guard);
    };
  }, []);
}

/** Hands this device's volumes, speed, arrangement and how often to the playback, as they are and whenever they change. */
function usePlaybackSettings(): void {
  const { playback } = useParts();
  const volumes = useView((state) => state.volumes);
  const speed = useView((state) => state.speedPercent);
  useEffect(() => playback.setVolumes(mixLevels(volumes)), [playback, volumes]);
  const arrangement = useView((state) => state.arrangement);
  useEffect(
    () => playback.setManner({ speedPercent: speed, arrangement }),
    [playback, speed, arrangement],
  );
  const times = useView((state) => state.times);
  useEffect(() => playback.setTimes(times), [playback, times]);
}

function Sheet() {
  const parts = useParts();
  const { store, playback, view } = parts;
  const theme = useTheme();
  const page = useView((state) => state.page);
  const [showsSongs, setShowsSongs] = useState(false);
  const [showsKeys, setShowsKeys] = useState(false);
  useKeys(carryOut);
  useFocusLetGo();
  // Not while the sheet that teaches them is open.
  useTaught(!showsKeys);
  useDropGuard();
  useGestureEnds();
  usePlaybackSettings();
  useWakeLock(usePlayback().status === 'playing');
  useEffect(() => keepMarksInPlace(parts), [parts]);
  useEffect(() => keepStageInView(parts), [parts]);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  const View = PAGE_VIEWS[page];
  return (
    <div className="app">
      <Head
        theme={theme}
        onShowSongs={() => setShowsSongs(true)}
        onShowKeys={() => setShowsKeys(true)}
      />
      <main className="page" id={`page-${page}`}>
        <PageGuard key={page} onUndo={store.undo}>
          <View />
        </PageGuard>
      </main>
      <div>
        <Message />
        <RestReminder />
        <PlanClock />
        <Foot onPlay={() => void playback.play(playRequestOf(store, view))} />
      </div>
      <SongsSheet open={showsSongs} onClose={() => setShowsSongs(false)} />
      <KeysAndCautions open={showsKeys} onClose={() => setShowsKeys(false)} />
    </div>
  );
}

/** The whole tool on one sheet. */
export function App({ parts }: { readonly parts: Parts }) {
  return (
    <PartsContext value={parts}>
      <Sheet />
    </PartsContext>
  );
}
