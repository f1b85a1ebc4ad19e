import { recordReader, type Step } from './read-record.ts';

/**
 * Every step from one schema of records to the next. To add one: raise `SCHEMA` in `core/records.ts`, add the step
 * here, freeze one record of each touched type under `tests/fixtures/records/v<n>/`. Steps are never changed later:
 * old phones and old backups still pass through them.
 */
export const migrations: readonly Step[] = [];

/** Reads a record from this phone's storage or from a backup, whatever its age. */
export const readRecord = recordReader(migrations);
