import type { HandsAnswer, HandsQuestion } from '../core/voicing/sectionHands.ts';

/** Whoever searches: it answers every question with one message, in order. */
export type HandsWorker = {
  readonly search: (question: HandsQuestion) => void;
  readonly onAnswer: (listener: (hands: HandsAnswer) => void) => void;
  readonly end: () => void;
};

/** A search for hands that leaves the page free meanwhile. */
export type HandsSearch = {
  /**
   * Answers once the hands are found. A question that is asked while another is being searched waits;
   * of those that wait only the newest is searched, and of those that are searched only the newest
   * is answered.
   */
  readonly ask: (question: HandsQuestion, answer: (hands: HandsAnswer) => void) => void;
  /** Ends the search for good; nothing is answered any more. */
  readonly close: () => void;
};

type Asked = {
  readonly question: HandsQuestion;
  readonly answer: (hands: HandsAnswer) => void;
};

function startWorker(): HandsWorker {
  const worker = new Worker(new URL('./handsWorker.ts', import.meta.url), { type: 'module' });
  return {
    search: (question) => worker.postMessage(question, {}),
    onAnswer: (listener) =>
      worker.addEventListener('message', ({ data }: MessageEvent<HandsAnswer>) => listener(data)),
    end: () => worker.terminate(),
  };
}

/** A search for the hands of long sections (`sectionHands`) in a worker of its own. */
export function createHandsSearch(worker: HandsWorker = startWorker()): HandsSearch {
  let searched: Asked | undefined;
  let waiting: Asked | undefined;
  const search = (asked: Asked | undefined) => {
    searched = asked;
    if (asked) worker.search(asked.question);
  };
  worker.onAnswer((hands) => {
    const [done, next] = [searched, waiting];
    waiting = undefined;
    search(next);
    if (!next) done?.answer(hands);
  });
  return {
    ask(question, answer) {
      if (searched) waiting = { question, answer };
      else search({ question, answer });
    },
    close() {
      searched = undefined;
      waiting = undefined;
      worker.end();
    },
  };
}
