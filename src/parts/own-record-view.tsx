import { entry, type Treatment } from '../core/catalogue.ts';
import { calibrationOf } from '../core/own-record.ts';
import { PRIOR_BLOCKS } from '../core/simulate/belief.ts';
import { percent, timesInTen } from '../text/format.ts';
import { useApp } from '../ui/app.ts';
import css from './own-record-view.module.css';

const referenceWords: Record<Treatment['reference'], string> = {
  record: 'Recording',
  cleanAndSeal: 'Cleaning and sealing',
  glueAndFill: 'Gluing and filling',
  joinery: 'Joinery',
  puzzle: 'Puzzle parts',
  sparterie: 'Sparterie',
  pests: 'Against pests',
  metal: 'Metal',
};

/** What the owner's own work has taught so far: pace, how good the estimates are, and how often what is found. */
export function OwnRecordView() {
  const { store, own, catalogue } = useApp();
  const jobs = store.all('job').value;
  const record = calibrationOf(jobs, store.all('repair').value);
  const pace = own.pace.value;
  const seen = Object.entries(own.tallies.value)
    .map(([key, tally]) => {
      const [kind = '', group = ''] = key.split(' ');
      const prior = entry(catalogue.damage, kind)?.prior.present.unknown ?? 0;
      return { kind, group, tally, present: (PRIOR_BLOCKS * prior + tally.found) / (PRIOR_BLOCKS + tally.looked) };
    })
    .filter(({ tally }) => tally.looked >= 3)
    .sort((a, b) => b.present - a.present)
    .slice(0, 12);
  return (
    <div class={css.own}>
      {jobs.length === 0 ? (
        <p>No hours written down yet. The catalogue’s estimates stand, with a quarter of spread (trade estimate).</p>
      ) : (
        <table class="figures">
          <caption>Your hours against the estimates</caption>
          <thead>
            <tr>
              <th scope="col">Kind of work</th>
              <th scope="col">Jobs</th>
              <th scope="col">Half take up to</th>
            </tr>
          </thead>
          <tbody>
            {(Object.keys(referenceWords) as Treatment['reference'][]).map((reference) => {
              const count = jobs.filter((job) => job.reference === reference).length;
              const median = pace[reference]?.median;
              return (
                median !== undefined && (
                  <tr key={reference}>
                    <th scope="row">{referenceWords[reference]}</th>
                    <td>{count}</td>
                    <td>{median.toFixed(2)} × the estimate</td>
                  </tr>
                )
              );
            })}
          </tbody>
        </table>
      )}
      {record.bands.share !== null && (
        <p class="figures">
          {record.bands.inside} of {record.bands.of} jobs fell inside the band that should hold 8 in 10.
          {record.bands.chanceOfSoFew < 0.05 && ' That is fewer than luck explains: the bands are too narrow for you.'}
        </p>
      )}
      {record.brier !== null && (
        <p class="figures">
          “Will it hold”: {record.repairs} repairs judged, Brier score {record.brier.toFixed(2)} (0 is perfect, 0.25 is
          guessing).
        </p>
      )}
      {seen.length > 0 && (
        <table class="figures">
          <caption>How often your blocks show it</caption>
          <thead>
            <tr>
              <th scope="col">Damage</th>
              <th scope="col">Surveys</th>
              <th scope="col">Expected now</th>
            </tr>
          </thead>
          <tbody>
            {seen.map(({ kind, group, tally, present }) => (
              <tr key={`${kind} ${group}`}>
                <th scope="row">
                  {entry(catalogue.damage, kind)?.term ?? kind} ({group})
                </th>
                <td>
                  {tally.found} of {tally.looked}
                </td>
                <td>
                  {timesInTen(present)} ({percent(present)})
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {seen.length === 0 && (
        <p>
          Until three of your own surveys have looked for a damage, its chance is the catalogue’s (trade estimate,
          counted as {PRIOR_BLOCKS} blocks). The example sale teaches nothing.
        </p>
      )}
    </div>
  );
}
