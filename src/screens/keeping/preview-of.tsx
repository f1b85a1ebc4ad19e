import { useState } from 'preact/hooks';
import type { StillOut } from '../../imports/journal.ts';
import type { BlockPreview, Fate, Preview } from '../../imports/preview.ts';
import type { OpenedArchive } from '../../imports/reader.ts';
import { blockName } from '../../parts/block-name.ts';
import { howLongAgo } from '../../text/ages.ts';
import { bytes } from '../../text/bytes.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { ChoiceField, TickField } from '../../ui/field.tsx';
import css from './keeping.module.css';
import { filesNamed } from './volume-words.ts';

const fateWords: Record<Fate, string> = {
  new: 'not here yet',
  changed: 'changes',
  removed: 'removed there: would go here too',
  back: 'removed here, worked on there: would come back',
  same: 'no change',
};

const ways = [
  { id: 'all', label: 'All of it' },
  { id: 'some', label: 'Chosen blocks' },
] as const;
/** Blocks drawn at once. */
const PAGE = 40;

const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** What a file would change, before it does. */
export function PreviewOf({
  archive,
  preview,
  stillOut,
  onTake,
  onClose,
}: {
  readonly archive: OpenedArchive;
  readonly preview: Preview;
  /** What these files would leave out. */
  readonly stillOut: StillOut;
  /** Ids of blocks, or null for everything. */
  readonly onTake: (blocks: ReadonlySet<string> | null) => void;
  readonly onClose: () => void;
}) {
  const { now, store } = useApp();
  const space = store.keeping.space.value;
  const [way, setWay] = useState<'all' | 'some'>('all');
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [most, setMost] = useState(PAGE);
  const { index, kept } = archive;
  const isPart = stillOut.volumes.length > 0;
  const touched = preview.blocks.filter(({ fate, pictures }) => fate !== 'same' || pictures.length > 0);
  const { sales, settings, rest } = preview.others;
  const isNothing = touched.length + sales + rest + kept.length === 0 && !settings;
  const toCome = new Set(touched.flatMap(({ id, pictures }) => (way === 'all' || chosen.has(id) ? pictures : [])));
  const size = [...toCome].reduce((total, hash) => total + (archive.pictures.get(hash)?.bytes ?? 0), 0);
  const conflicts = touched.flatMap((one) => one.conflicts).length;
  const also = [
    ...(sales > 0 ? [plural(sales, 'sale')] : []),
    ...(rest > 0 ? [plural(rest, 'other record')] : []),
    ...(settings ? ['your settings'] : []),
  ];
  return (
    <>
      <p role="status">
        <b>
          Made {howLongAgo(Date.parse(index.made), now())}, {plural(preview.blocks.length, 'block')} in it.
        </b>{' '}
        {isNothing ? 'Everything in it is here already.' : `${plural(touched.length, 'block')} would change.`}
      </p>
      {isPart && (
        <p class={css.caution} role="note">
          {filesNamed(stillOut.volumes, index.volumes)} {stillOut.volumes.length === 1 ? 'is' : 'are'} not among these.
          The records are complete; {plural(stillOut.pictures, 'photograph')} will be missing until{' '}
          {stillOut.volumes.length === 1 ? 'it is' : 'they are'} taken in too.
        </p>
      )}
      {!index.isWhole && <p>It was made for handing on: private names, places and prices are left out of it.</p>}
      {kept.length > 0 && (
        <p>
          {plural(kept.length, 'record')} in it cannot be read yet or {kept.length === 1 ? 'is' : 'are'} dated in the
          future; kept aside as {kept.length === 1 ? 'it is' : 'they are'}.
        </p>
      )}
      {conflicts > 0 && (
        <p>
          In {plural(conflicts, 'place')} both phones wrote something else. Both are kept, and marked until you choose.
        </p>
      )}
      {touched.length > 1 && (
        <ChoiceField label="Take in" value={way} options={ways} onChange={(to) => to && setWay(to)} />
      )}
      <ul class={css.blocks}>
        {touched.slice(0, most).map((one) => (
          <BlockLine
            key={one.id}
            of={one}
            chosen={way === 'some' ? chosen.has(one.id) : null}
            onChoose={(yes) => {
              const next = new Set(chosen);
              if (yes) next.add(one.id);
              else next.delete(one.id);
              setChosen(next);
            }}
          />
        ))}
      </ul>
      {touched.length > most && (
        <Button wide onPress={() => setMost(most + PAGE)}>
          Show more ({touched.length - most} left)
        </Button>
      )}
      {way === 'all' && also.length > 0 && <p>And {also.join(', ')}.</p>}
      {toCome.size > 0 && (
        <p class="figures">
          {plural(toCome.size, 'photograph')} to come, {bytes(size)}.
        </p>
      )}
      {space && size > space.quota - space.usage && (
        <p class={css.caution} role="note">
          There is room for about {bytes(Math.max(0, space.quota - space.usage))} only. Free some space first, or take
          in chosen blocks.
        </p>
      )}
      <div class={css.ways}>
        {!isNothing && (
          <Button
            look="main"
            disabled={way === 'some' && chosen.size === 0}
            onPress={() => onTake(way === 'all' ? null : chosen)}
          >
            {isPart && way === 'all'
              ? 'Take in what is here'
              : way === 'all'
                ? 'Take it in'
                : `Take in ${plural(chosen.size, 'block')}`}
          </Button>
        )}
        <Button onPress={onClose}>{isNothing ? 'Close' : 'Leave it'}</Button>
      </div>
    </>
  );
}

function BlockLine({
  of: { block, fate, changes, conflicts, pictures },
  chosen,
  onChoose,
}: {
  readonly of: BlockPreview;
  /** Null where everything is taken. */
  readonly chosen: boolean | null;
  readonly onChoose: (yes: boolean) => void;
}) {
  const { catalogue } = useApp();
  const name = blockName(block, catalogue);
  const facts = [
    fate === 'changed' ? plural(changes, 'change') : fateWords[fate],
    ...(pictures.length > 0 ? [plural(pictures.length, 'photograph')] : []),
    ...(conflicts.length > 0 ? [`${plural(conflicts.length, 'text')} kept twice`] : []),
  ].join(' · ');
  return (
    <li>
      {chosen === null ? (
        <p>
          <b>{name}</b> <span class={css.hint}>{facts}</span>
        </p>
      ) : (
        <TickField label={name} hint={facts} value={chosen} onChange={onChoose} />
      )}
    </li>
  );
}
