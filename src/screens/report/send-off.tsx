import { useEffect, useRef, useState } from 'preact/hooks';
import { AppError } from '../../core/errors.ts';
import type { ReportDocument } from '../../core/report.ts';
import { canSend, saveFile, sendFile } from '../../exports/hand-over.ts';
import type { ReportFormat } from '../../exports/report-file.ts';
import { alignedCrops } from '../../parts/aligned-crops.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './report.module.css';

// Every format is a file in exports/ with a default export; a new one appears here by itself.
const formats = import.meta.glob<{ default?: ReportFormat }>('../../exports/html.ts', { eager: false });

type State =
  | { readonly at: 'start' }
  | { readonly at: 'writing'; readonly done: number; readonly of: number }
  | { readonly at: 'ready'; readonly file: File; readonly said?: string }
  | { readonly at: 'failed'; readonly error: unknown };

/** Two steps, because a phone only lets a file be sent by a fresh tap: prepare it, then save or send it. */
export function SendOff({ report }: { readonly report: ReportDocument }) {
  const { store } = useApp();
  const [state, setState] = useState<State>({ at: 'start' });
  const work = useRef<AbortController | undefined>(undefined);
  // What was prepared is of the report as it was.
  useEffect(() => {
    work.current?.abort();
    setState({ at: 'start' });
  }, [report]);

  async function prepare(): Promise<void> {
    const control = new AbortController();
    work.current = control;
    setState({ at: 'writing', done: 0, of: 0 });
    try {
      const load = Object.values(formats)[0];
      const format = (await load?.())?.default;
      if (!format) throw new AppError('export-failed');
      const blob = await format.write(report, {
        picture: (sha256) => store.photoBytes(sha256),
        aligned: (pair) => alignedCrops(pair, (sha256) => store.photoBytes(sha256), control.signal),
        signal: control.signal,
        onStep: (done, of) => setState({ at: 'writing', done, of }),
      });
      control.signal.throwIfAborted();
      const name = `${report.identifier}-as-found-${report.made.slice(0, 10)}.${format.extension}`;
      setState({ at: 'ready', file: new File([blob], name, { type: format.mimeType }) });
    } catch (error) {
      if (control.signal.aborted) setState({ at: 'start' });
      else setState({ at: 'failed', error });
    }
  }

  if (state.at === 'writing') {
    return (
      <div class={css.send}>
        <p role="status" class="figures">
          Writing{state.of > 0 && ` photograph ${state.done} of ${state.of}`}…
        </p>
        <Button wide onPress={() => work.current?.abort()}>
          Stop
        </Button>
      </div>
    );
  }
  if (state.at === 'ready') {
    const { file } = state;
    return (
      <div class={css.send}>
        <p role="status">{state.said ?? `${file.name}, ${Math.max(1, Math.round(file.size / 1024))} kB, is ready.`}</p>
        <div class={css.ways}>
          <Button
            look="main"
            onPress={() => {
              saveFile(file);
              setState({ ...state, said: 'Handed to the browser to save.' });
            }}
          >
            Save the file
          </Button>
          {canSend(file) && (
            <Button
              look="main"
              onPress={() => {
                sendFile(file).then(
                  (sent) => setState({ ...state, said: sent ? 'Sent on its way.' : 'Not sent.' }),
                  (error: unknown) => setState({ at: 'failed', error }),
                );
              }}
            >
              Send it
            </Button>
          )}
        </div>
      </div>
    );
  }
  return (
    <div class={css.send}>
      {state.at === 'failed' && <p role="alert">{sentenceOf(state.error)}</p>}
      <Button look="main" wide onPress={() => void prepare()}>
        Prepare the report
      </Button>
    </div>
  );
}
