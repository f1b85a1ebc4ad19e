import { useEffect, useRef, useState } from 'preact/hooks';
import type { ReportDocument } from '../../core/report.ts';
import { canSend, saveFile, sendFile } from '../../exports/hand-over.ts';
import type { ReportFormat } from '../../exports/report-file.ts';
import { alignedCrops } from '../../parts/aligned-crops.ts';
import { reportPictures } from '../../parts/report-pictures.ts';
import { bytes as sizeWords } from '../../text/bytes.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './report.module.css';

type State =
  | { readonly at: 'start' }
  | { readonly at: 'writing'; readonly done: number; readonly of: number }
  | { readonly at: 'ready'; readonly file: File; readonly said?: string }
  | { readonly at: 'failed'; readonly error: unknown };

/** Two steps, because a phone only lets a file be sent by a fresh tap: prepare it, then save or send it. */
export function SendOff({ report, format }: { readonly report: ReportDocument; readonly format: ReportFormat }) {
  const { store } = useApp();
  const [state, setState] = useState<State>({ at: 'start' });
  const work = useRef<AbortController | undefined>(undefined);
  // What was prepared is of the report as it was, in the format it was asked in.
  useEffect(() => {
    setState({ at: 'start' });
    return () => work.current?.abort();
  }, [report, format]);

  async function prepare(): Promise<void> {
    const control = new AbortController();
    work.current = control;
    setState({ at: 'writing', done: 0, of: 0 });
    try {
      const blob = await format.write(report, {
        picture: reportPictures((sha256) => store.photoBytes(sha256), control.signal),
        aligned: (pair) => alignedCrops(pair, (sha256) => store.photoBytes(sha256), control.signal),
        signal: control.signal,
        onStep: (done, of) => {
          if (!control.signal.aborted) setState({ at: 'writing', done, of });
        },
      });
      control.signal.throwIfAborted();
      const name = `${report.identifier}-${report.made.slice(0, 10)}.${format.extension}`;
      setState({ at: 'ready', file: new File([blob], name, { type: format.mimeType }) });
    } catch (error) {
      if (work.current !== control) return;
      if (control.signal.aborted) setState({ at: 'start' });
      else setState({ at: 'failed', error });
    } finally {
      // Ends what helped to write it.
      control.abort();
    }
  }

  if (state.at === 'writing') {
    return (
      <div class={css.send}>
        <p role="status">Writing the report…</p>
        <progress aria-label="Written so far" max={state.of || 1} value={state.done} />
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
        <p role="status">{state.said ?? `${file.name}, ${sizeWords(file.size)}, is ready.`}</p>
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
