import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { plainTerms } from '../core/blank.ts';
import { COMMON_SEED } from '../core/simulate/luck.ts';
import type { Forecast, ForecastCase } from '../core/simulate/simulate.ts';
import { useApp } from '../ui/app.ts';
import type { BlockCase } from './use-case.ts';

/** What one may try out without writing it down. */
export interface WhatIf {
  readonly priceAsked?: number | null;
  readonly hourlyRate?: number;
  readonly failing?: readonly string[];
  /** Kinds taken as looked for and not seen. */
  readonly noneSeen?: readonly string[];
}

const NOTHING: WhatIf = {};

/** The facts of a forecast. */
export function useForecastCase(of: BlockCase, whatIf: WhatIf = NOTHING): ForecastCase {
  const { own } = useApp();
  const pace = own.pace.value;
  const tallies = own.tallies.value;
  const { block, survey, findings, sale, settings } = of;
  return useMemo(
    () => ({
      block: whatIf.priceAsked === undefined ? block : { ...block, priceAsked: whatIf.priceAsked },
      survey: whatIf.noneSeen
        ? {
            ...survey,
            noneSeen: {
              ...survey.noneSeen,
              ...Object.fromEntries(whatIf.noneSeen.map((kind) => [kind, true as const])),
            },
          }
        : survey,
      findings,
      terms: sale?.terms ?? plainTerms,
      settings: whatIf.hourlyRate === undefined ? settings : { ...settings, hourlyRate: whatIf.hourlyRate },
      pace,
      origin: block.origin ?? sale?.origin ?? 'unknown',
      tallies,
      seed: COMMON_SEED,
      ...(whatIf.failing ? { failing: whatIf.failing } : {}),
    }),
    [block, survey, findings, sale, settings, pace, tallies, whatIf],
  );
}

/** The answer under uncertainty, made beside the page; the last one stays while the next is being made. */
export function useForecast(facts: ForecastCase, topic: string): { forecast: Forecast | undefined; stale: boolean } {
  const { forecaster } = useApp();
  const [answer, setAnswer] = useState<{ readonly to: ForecastCase; readonly forecast: Forecast }>();
  const asked = useRef<ForecastCase | undefined>(undefined);
  useEffect(() => {
    asked.current = facts;
    forecaster.ask(topic, facts).then(
      (forecast) => {
        if (forecast && asked.current === facts) setAnswer({ to: facts, forecast });
      },
      // Without a worker the answer by the book still stands; it is shown as such.
      () => undefined,
    );
  }, [facts, topic, forecaster]);
  return { forecast: answer?.forecast, stale: answer?.to !== facts };
}
