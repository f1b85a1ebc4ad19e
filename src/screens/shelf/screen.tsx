import { useState } from 'preact/hooks';
import { entry, VERDICTS, type Verdict } from '../../core/catalogue.ts';
import { type HatBlock, PLACES } from '../../core/records.ts';
import { blockName } from '../../parts/block-name.ts';
import { BlockRow } from '../../parts/block-row.tsx';
import { ExamplePictures } from '../../parts/example-pictures.tsx';
import { Notices } from '../../parts/notices.tsx';
import { useExample } from '../../parts/use-example.ts';
import { useVerdicts } from '../../parts/use-verdicts.ts';
import { placeWords } from '../../text/places.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { SelectField, TextField } from '../../ui/field.tsx';
import { Page, Section } from '../../ui/page.tsx';
import { to } from '../../ui/route.ts';
import css from './shelf.module.css';

export default function ShelfScreen() {
  const { store } = useApp();
  const blocks = store.blocks.value;
  return (
    <Page
      title="Blockworth"
      wide={blocks.length > 0}
      dock={
        <Button look="main" wide href="#/look">
          Look at a block
        </Button>
      }
    >
      <Notices />
      {blocks.length === 0 ? <EmptyShelf /> : <Blocks blocks={blocks} />}
    </Page>
  );
}

function EmptyShelf() {
  const { open, busy } = useExample();
  return (
    <div class={css.empty}>
      <p class={css.lead}>
        An empty shelf. Look at a hat block, and it stands here with what you found and what it is worth.
      </p>
      <Button onPress={() => void open()} disabled={busy} wide>
        {busy ? 'Opening the example sale…' : 'Open the example sale'}
      </Button>
      <p class={css.hint}>
        An invented closing sale at a playhouse, ten lots to try things on. One tap takes it away again.
      </p>
    </div>
  );
}

function Blocks({ blocks }: { readonly blocks: readonly HatBlock[] }) {
  const { catalogue, store } = useApp();
  const verdicts = useVerdicts();
  const [words, setWords] = useState('');
  const [verdict, setVerdict] = useState<Verdict | ''>('');
  const [type, setType] = useState('');
  const [sale, setSale] = useState('');
  const [most, setMost] = useState(60);
  const { present, remove } = useExample();

  const wanted = words.toLocaleLowerCase('en-GB').split(/\s+/).filter(Boolean);
  const fits = (block: HatBlock): boolean => {
    const typeTerms = entry(catalogue.types, block.blockType);
    const materials = block.materials.map((id) => entry(catalogue.materials, id)?.term ?? id);
    const text = [
      blockName(block, catalogue),
      block.note,
      block.maker,
      typeTerms?.term,
      ...(typeTerms?.aliases ?? []),
      ...materials,
    ]
      .join(' ')
      .toLocaleLowerCase('en-GB');
    return (
      wanted.every((word) => text.includes(word)) &&
      (verdict === '' || verdicts(block.id) === verdict) &&
      (type === '' || block.blockType === type) &&
      (sale === '' || block.saleId === sale)
    );
  };
  const shown = blocks.filter(fits);
  const types = [...new Set(blocks.flatMap(({ blockType }) => (blockType ? [blockType] : [])))];
  const sales = store.all('sale').value;
  let left = most;
  return (
    <>
      {blocks.length > 5 && (
        <details class={css.find}>
          <summary>Find{shown.length < blocks.length && `: ${shown.length} of ${blocks.length} shown`}</summary>
          <TextField label="Words" value={words} onChange={setWords} hint="Name, number, type, wood, note" />
          <div class={css.filters}>
            <SelectField
              label="Verdict"
              value={verdict}
              options={[
                { id: '' as const, label: 'Any' },
                ...VERDICTS.map((id) => ({ id, label: catalogue.verdicts[id].term })),
              ]}
              onChange={setVerdict}
            />
            <SelectField
              label="Type"
              value={type}
              options={[
                { id: '', label: 'Any' },
                ...types.map((id) => ({ id, label: entry(catalogue.types, id)?.term ?? id })),
              ]}
              onChange={setType}
            />
            {sales.length > 0 && (
              <SelectField
                label="Sale"
                value={sale}
                options={[
                  { id: '', label: 'Any' },
                  ...sales.map(({ id, title }) => ({ id, label: title || 'Unnamed sale' })),
                ]}
                onChange={setSale}
              />
            )}
          </div>
        </details>
      )}
      {shown.length === 0 && <p class={css.lead}>No block fits these words.</p>}
      {PLACES.map((place) => {
        const here = shown.filter((block) => block.place === place);
        if (here.length === 0 || left <= 0) return null;
        const rows = here.slice(0, left);
        left -= rows.length;
        return (
          <Section
            key={place}
            title={placeWords[place]}
            aside={
              place === 'quarantine' ? (
                <a href={to('/quarantine')}>Looks due</a>
              ) : (
                <span class="figures">{here.length}</span>
              )
            }
          >
            <ul class={css.blocks}>
              {rows.map((block) => (
                <BlockRow key={block.id} id={block.id} />
              ))}
            </ul>
          </Section>
        );
      })}
      {shown.length > most && (
        <Button wide onPress={() => setMost(most + 60)}>
          Show more ({shown.length - most} left)
        </Button>
      )}
      {present && (
        <p class={css.example}>
          The Lanthorn Playhouse sale is an invented example, its photographs are drawn by computer. <ExamplePictures />
          <Button look="quiet" onPress={remove}>
            Take the example away
          </Button>
        </p>
      )}
    </>
  );
}
