import { useEffect, useRef, useState } from 'preact/hooks';
import type { ReportDocument } from '../../core/report.ts';
import type { ReportFormat } from '../../exports/report-file.ts';
import { alignedCrops } from '../../parts/aligned-crops.ts';
import { ReadyFile } from '../../parts/ready-file.tsx';
import { reportPictures } from '../../parts/report-pictures.ts';
import { bytes as sizeWords } from '../../text/bytes.ts';
import { sentenceOf } from '../../text/errors.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import css from './report.module.css';

type State =
  | { readonly at: 'start' }
  | { readonly at: 'writing'; readonly done: number; readonly of: number }
  | { readonly at: 'ready'; readonly file: File }
  | { readonly at: 'failed'; readonly error: unknown };

/** The report as a file: prepared first, then saved or sent. */
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
      <ReadyFile
        file={file}
        said={`${file.name}, ${sizeWords(file.size)}, is ready.`}
        look="main"
        onFail={(error) => setState({ at: 'failed', error })}
      />
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
