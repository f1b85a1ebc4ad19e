import { type Catalogue, entry } from '../../core/catalogue.ts';
import type { Finding, HatBlock, Photo } from '../../core/records.ts';
import type { PictureWords } from './xmp.ts';

export interface PictureCase {
  readonly photo: Photo;
  readonly block: HatBlock;
  /** Of the block. */
  readonly findings: readonly Finding[];
  /** The owner, if they want to be named. */
  readonly creator: string;
  /** `© 2026 …` or a licence by its SPDX id; empty says nothing. */
  readonly rights: string;
}

/** What a picture shows, in words, from what was recorded: the caption first, then view, block and finding. */
export function wordsOf({ photo, block, findings, creator, rights }: PictureCase, catalogue: Catalogue): PictureWords {
  const type = entry(catalogue.types, block.blockType)?.term ?? 'Hat block';
  const title = block.name.trim() || type;
  const view = entry(catalogue.views, photo.view)?.term ?? photo.view;
  const finding = findings.find(({ id }) => id === photo.findingId);
  const damage = finding && (entry(catalogue.damage, finding.kind)?.term ?? finding.kind);
  const zone = finding && (entry(catalogue.zones, finding.zone)?.term ?? finding.zone);
  const stage = photo.stage === 'before' ? 'before the work' : `${photo.stage} the work`;
  const shown = finding ? `${view}: finding ${finding.number}, ${damage} at the ${zone}` : view;
  const caption = photo.caption.trim();
  return {
    creator,
    taken: photo.taken,
    title,
    description: [caption, `${title}. ${shown}, ${stage}.`].filter(Boolean).join(' '),
    altText: caption || `${title}: ${shown}`,
    longDescription: [
      `${title}${title === type ? '' : `, ${type}`}, seen in the view “${view}” ${stage}.`,
      finding ? `It shows finding ${finding.number}: ${damage} at the ${zone}. ${finding.note}`.trim() : '',
      caption,
    ]
      .filter(Boolean)
      .join(' '),
    objectNumber: block.objectNumber.trim(),
    rights,
    identifier: `urn:uuid:${photo.id}`,
  };
}
