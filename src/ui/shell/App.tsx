import { useEffect, useEffectEvent, useState } from 'react';
import { unreachable } from '../../core/result.ts';
import { setClick } from '../../state/edits/practice.ts';
import { DrillPage } from '../drill/DrillPage.tsx';
import { goToRungBeside, keepStageInView } from '../drill/goToRung.ts';
import { rungAgain } from '../drill/rungAgain.ts';
import { HandsPage } from '../hands/HandsPage.tsx';
import { useWakeLock } from '../kit/useWakeLock.ts';
import { MapPage } from '../map/MapPage.tsx';
import { usePatternActions } from '../parts/pattern/usePatterns.ts';
import { PlanClock } from '../parts/plan/PlanClock.tsx';
import { type Parts, PartsContext, useParts } from '../parts/tool/parts.ts';
import { playRequestOf } from '../parts/tool/playRequest.ts';
import { usePlayback, useView } from '../parts/tool/useProject.ts';
import { mixLevels, type Page, type Theme } from '../parts/tool/viewState.ts';
import { changeTempo } from '../parts/transport/changeTempo.ts';
import { goToSectionBeside } from '../play/goToSection.ts';
import { PlayPage } from '../play/PlayPage.tsx';
import { RhythmPage } from '../rhythm/RhythmPage.tsx';
import { SongsSheet } from '../songs/SongsSheet.tsx';
import { songsSentence } from '../songs/songsMessages.ts';
import { droppedFile } from './droppedFile.ts';
import { Foot } from './Foot.tsx';
import { Head } from './Head.tsx';
import { KeysAndCautions } from './KeysAndCautions.tsx';
import type { KeyCommand } from './keyBindings.ts';
import { Message } from './Message.tsx';
import { keepMarksInPlace } from './marksInPlace.ts';
import { PageGuard } from './PageGuard.tsx';
import { RestReminder } from './RestReminder.tsx';
import { commandOfTaught } from './taughtCommand.ts';
import { useFocusLetGo } from './useFocusLetGo.ts';
import { useKeys } from './useKeys.ts';

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
    // A drag on the grid takes the focus along with what it moves, and goes on.
    const left = ({ target }: FocusEvent) => {
      if (target instanceof Element && target.matches('input, select, textarea'))
        store.endGesture();
    };
    addEventListener('focusout', left);
    return () => removeEventListener('focusout', left);
  }, [store]);
}

/**
 * Answers every file that is dropped or pasted anywhere: takes it to where it belongs, or says (`onAnswer`) what can be
 * given. The browser never leaves the song for it. Places that take files themselves have done so before.
 */
function useGivenFiles(onAnswer: (answer: string | undefined) => void): void {
  const { view, givenFiles, songs } = useParts();
  const { addFamily } = usePatternActions();
  const place = useEffectEvent(async (file: File) => {
    onAnswer(undefined);
    const dropped = await droppedFile(file);
    switch (dropped.kind) {
      case 'band':
        view.set({ page: 'rhythm' });
        givenFiles.give(file);
        break;
      case 'patterns':
        addFamily(dropped.family);
        view.set({ page: 'rhythm' });
        break;
      case 'song': {
        const isOpen = await songs.openFile(file);
        const { problem } = songs.state();
        if (!isOpen && problem) onAnswer(songsSentence(problem));
        break;
      }
      case 'unknown':
        onAnswer(
          `“${file.name}” can’t be opened here: drop a recording, a MIDI file, a song or a pattern of Vampwright.`,
        );
        break;
      default:
        unreachable(dropped);
    }
  });
  useEffect(() => {
    const guard = (event: DragEvent) => event.preventDefault();
    const drop = (event: DragEvent) => {
      const file = event.dataTransfer?.files[0];
      if (file && !event.defaultPrevented) void place(file);
      event.preventDefault();
    };
    const paste = ({ clipboardData }: ClipboardEvent) => {
      const file = clipboardData?.files[0];
      if (file) void place(file);
    };
    addEventListener('dragover', guard);
    addEventListener('drop', drop);
    addEventListener('paste', paste);
    return () => {
      removeEventListener('dragover', guard);
      removeEventListener('drop', drop);
      removeEventListener('paste', paste);
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
  const [answer, setAnswer] = useState<string>();
  useKeys(carryOut);
  useFocusLetGo();
  // Not while the sheet that teaches them is open.
  useTaught(!showsKeys);
  useGivenFiles(setAnswer);
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
        <Message answer={answer} onAnswered={() => setAnswer(undefined)} />
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
