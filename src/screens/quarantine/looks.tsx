import { useState } from 'preact/hooks';
import type { QuarantineCheck } from '../../core/records.ts';
import { useAddPhoto } from '../../parts/add-photo.ts';
import { OtherWords } from '../../parts/other-words.tsx';
import { useQuarantineActions } from '../../parts/quarantine-actions.ts';
import type { QuarantineView } from '../../parts/quarantine-facts.ts';
import { StoredPicture } from '../../parts/stored-picture.tsx';
import type { BlockCase } from '../../parts/use-case.ts';
import { PhotoInput } from '../../photos/photo-input.tsx';
import { dayHere, dayWords } from '../../text/days.ts';
import { watchOf } from '../../text/quarantine.ts';
import { useApp } from '../../ui/app.ts';
import { Button } from '../../ui/button.tsx';
import { DayField } from '../../ui/day-field.tsx';
import { ChoiceField, TextField } from '../../ui/field.tsx';
import { to } from '../../ui/route.ts';
import css from './quarantine.module.css';

interface Looking {
  readonly of: BlockCase;
  readonly view: QuarantineView;
}

/** When to look next, the look itself, and the looks so far. */
export function Looks({ of, view }: Looking) {
  const { now } = useApp();
  const { checks, course } = view;
  const open = course.looks.filter(({ taken }) => !taken);
  const today = dayHere(now());
  const next = open.filter(({ on }) => on < today).at(-1) ?? open[0];
  const later = next ? open.filter(({ on }) => on > next.on) : [];
  return (
    <>
      {next && (
        <p class={css.next} data-late={next.on < today || undefined}>
          {next.last ? 'Last look' : 'Look next'}: <b class="figures">{dayWords(next.on)}</b>
          {next.on < today && ', missed'}
          {next.on === today && ', today'}
        </p>
      )}
      <NewLook of={of} view={view} />
      {later.length > 0 && (
        <details class={css.more}>
          <summary>Then {later.length === 1 ? 'once more' : `${later.length} times more`}</summary>
          <ol class="figures">
            {later.map(({ number, on, last }) => (
              <li key={number}>
                {dayWords(on)}
                {last && ', the last'}
              </li>
            ))}
          </ol>
        </details>
      )}
      {checks.length > 0 && (
        <ul class={css.looks}>
          {[...checks].reverse().map((look) => (
            <li key={look.id}>
              <Look of={of} look={look} fresh={watchOf(view.quarantine.reason).fresh} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const answers = [
  { id: 'no', label: 'Nothing fresh' },
  { id: 'yes', label: 'Fresh signs' },
] as const;

function NewLook({ view }: Looking) {
  const { now } = useApp();
  const actions = useQuarantineActions();
  const today = dayHere(now());
  const [fresh, setFresh] = useState<'no' | 'yes' | null>(null);
  const [on, setOn] = useState<string | null>(today);
  const [note, setNote] = useState('');
  const [said, setSaid] = useState('');
  const { begunOn, reason } = view.quarantine;
  const write = (): void => {
    if (!fresh || on === null) return;
    actions.addLook(view.quarantine, { on, freshSigns: fresh === 'yes', note });
    setSaid(fresh === 'yes' && on > begunOn ? 'Written down. The time starts again.' : 'Written down.');
    setFresh(null);
    setNote('');
  };
  return (
    <div class={css.look}>
      <ChoiceField
        label="What did the paper show?"
        hint={`${watchOf(reason).fresh}? Tap the block once over clean white paper and wait a moment. Dust after a journey alone proves nothing.`}
        value={fresh}
        options={answers}
        onChange={setFresh}
      />
      <DayField label="Looked on" value={on} min={begunOn} max={today} onChange={setOn} />
      <TextField label="Seen" value={note} onChange={setNote} />
      <Button look="main" wide disabled={!fresh || on === null || on < begunOn || on > today} onPress={write}>
        Write the look down
      </Button>
      <p role="status" class={css.hint}>
        {said}
      </p>
    </div>
  );
}

/** One look that was taken, with the photograph of its paper. */
function Look({ of, look, fresh }: { readonly of: BlockCase; readonly look: QuarantineCheck; readonly fresh: string }) {
  const { store } = useApp();
  const actions = useQuarantineActions();
  const addPhoto = useAddPhoto();
  const photo = look.paperPhotoId === null ? undefined : store.get('photo', look.paperPhotoId);
  const fields = {
    ...{ blockId: of.block.id, view: 'damageClose', stage: 'during' as const },
    caption: `Quarantine, ${dayWords(look.on)}: the paper beneath`,
  };
  return (
    <details class={css.more}>
      <summary>
        <span>
          <b class="figures">{dayWords(look.on)}</b> <span>{look.freshSigns ? fresh : 'Nothing fresh'}</span>
        </span>
      </summary>
      {photo && (
        <a class={css.paper} href={to('/block/:id/photo/:photo', { id: of.block.id, photo: photo.id })}>
          <StoredPicture sha256={photo.thumbnail} alt={photo.caption} />
          <span>The paper that day</span>
        </a>
      )}
      {!photo && (
        <>
          <p class={css.hint}>Photograph paper and holes: the next look is compared with it.</p>
          <PhotoInput
            context={JSON.stringify({ ...fields, look: look.id })}
            options={{ keepOriginal: of.settings.keepOriginals, keepPosition: of.settings.keepPosition }}
            onPrepared={async (prepared) => {
              const added = await addPhoto(prepared, fields);
              actions.setLook(look, { paperPhotoId: added.id });
            }}
          />
        </>
      )}
      <TextField label="Seen" value={look.note} onChange={(note) => actions.setLook(look, { note })} />
      <OtherWords record={look} path="note" />
      <Button look="quiet" label={`Remove the look of ${dayWords(look.on)}`} onPress={() => actions.removeLook(look)}>
        Remove this look
      </Button>
    </details>
  );
}
