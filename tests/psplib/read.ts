import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Project } from '../../src/core/schedule/project.ts';

/*
 * The research instances of R. Kolisch and A. Sprecher, "PSPLIB – a project scheduling problem library", European Journal
 * of Operational Research 96 (1997) 205–216, with their published optima. They are not part of this project: who has them
 * puts them beside it, or names the folder in PSPLIB: `optimum.csv` and the instances it lists.
 */

const folder = process.env.PSPLIB ?? resolve('../shared/data/psplib');

export interface Instance {
  readonly name: string;
  readonly project: Project;
  /** Published length of the shortest schedule. */
  readonly optimum: number;
  /** Longest chain without resources, as the file states it. */
  readonly longestChain: number;
}

const numbers = (line: string): number[] => line.trim().split(/\s+/).map(Number);

/** The lines between two headings of a file, the headings' own column titles left out. */
function section(text: string, from: string, to: string | null, titles: number): string[] {
  const begin = text.indexOf(`${from}:\n`);
  const end = to === null ? text.length : text.indexOf(`${to}:`);
  if (begin < 0 || end < 0) throw new Error(`No section ${from} in the file.`);
  return text
    .slice(begin, end)
    .split('\n')
    .slice(1 + titles)
    .filter((line) => line.trim() !== '' && !/^[*-]/.test(line));
}

/** A project of the library's text format for single-mode projects (`.sm`); jobs are numbered from 1, one mode each. */
export function readProject(text: string): { readonly project: Project; readonly longestChain: number } {
  const followers = section(text, 'PRECEDENCE RELATIONS', 'REQUESTS/DURATIONS', 1).map((line) =>
    numbers(line).slice(3),
  );
  const after: number[][] = followers.map(() => []);
  for (const [job, next] of followers.entries()) for (const one of next) after[one - 1]?.push(job);
  const jobs = section(text, 'REQUESTS/DURATIONS', 'RESOURCEAVAILABILITIES', 1).map(numbers);
  const [capacities = []] = section(text, 'RESOURCEAVAILABILITIES', null, 1).map(numbers);
  const information = section(text, 'PROJECT INFORMATION', 'PRECEDENCE RELATIONS', 1).map(numbers);
  return {
    project: {
      capacities,
      activities: jobs.map(([, , duration = 0, ...demands], job) => ({ duration, demands, after: after[job] ?? [] })),
    },
    longestChain: information[0]?.[5] ?? Number.NaN,
  };
}

/** All instances of the folder with a published optimum, by name; none where the folder is not there. */
export function instances(): readonly Instance[] {
  if (!existsSync(join(folder, 'optimum.csv'))) return [];
  const optima = new Map(
    readFileSync(join(folder, 'optimum.csv'), 'utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(',') as [string, string]),
  );
  return readdirSync(folder)
    .filter((name) => optima.has(name))
    .sort()
    .map((name) => ({
      name,
      optimum: Number(optima.get(name)),
      ...readProject(readFileSync(join(folder, name), 'utf8')),
    }));
}
