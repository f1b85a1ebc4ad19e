import type { Forecast, ForecastCase } from '../core/simulate/simulate.ts';
import { type Asker, createAsker } from './asker.ts';

export type Forecaster = Pick<Asker<ForecastCase, Forecast>, 'ask'>;

export const createForecaster = (startWorker: () => Worker): Forecaster =>
  createAsker<ForecastCase, Forecast>(startWorker, 'forecast');
