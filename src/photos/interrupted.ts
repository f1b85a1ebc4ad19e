import { signal } from '@preact/signals';

/** What a photograph was for when the phone closed the page under the camera; set once at the start. */
export const interrupted = signal<string | undefined>(undefined);
