import { entry } from '../../core/catalogue.ts';
import { SourceLine } from '../../parts/source-line.tsx';
import { useApp } from '../../ui/app.ts';
import { Section } from '../../ui/page.tsx';
import css from './handbook.module.css';
import { Facts, Links } from './handbook-parts.tsx';

/** A material: how to tell it, how it behaves, what usually goes wrong with it. */
export function MaterialEntry({ id }: { readonly id: string }) {
  const { catalogue } = useApp();
  const material = entry(catalogue.materials, id);
  if (!material) return null;
  const [low, high] = material.densityKgM3;
  return (
    <>
      <Section>
        <p class={css.lead}>{material.properties}</p>
        <Facts
          rows={[
            ['How to tell it', material.recognise],
            ['Weight', low === high ? `${low} kg/m³` : `${low} to ${high} kg/m³, dry`],
            ['Steam', material.steam],
            ['Pins', material.pins],
            ['Eaten by insects', material.insectFood ? 'yes' : 'no'],
          ]}
        />
        <SourceLine source={material.source} />
      </Section>
      <Section title="Usual faults">
        <Links
          section="damage"
          entries={material.usualFaults.map((kind) => ({
            id: kind,
            term: entry(catalogue.damage, kind)?.term ?? kind,
          }))}
        />
      </Section>
    </>
  );
}
