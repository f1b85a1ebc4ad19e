import type { Forecast, ForecastCase } from '../core/simulate/simulate.ts';

export interface ForecastQuestion {
  readonly id: number;
  readonly facts: ForecastCase;
}

export interface ForecastAnswer {
  readonly id: number;
  readonly forecast: Forecast;
}
