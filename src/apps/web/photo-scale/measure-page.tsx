import { useState } from 'react';
import { photoUrl } from '../api/post-photos.ts';
import { UnitPage } from '../bench/bench-page.tsx';
import { PhotoPick } from '../bench/photo-pick.tsx';
import { useUnit } from '../bench/unit-context.ts';
import { UnitTop } from '../bench/unit-top.tsx';
import { Section } from '../ui/section.tsx';
import { MeasureDesk } from './measure-desk.tsx';

/** Distances on a photo of a unit: the photo is laid on its board by marks, then two places are tapped. */
export default function MeasurePage({ id }: { readonly id: string }) {
  return (
    <UnitPage id={id}>
      <WhichPhoto />
    </UnitPage>
  );
}

function WhichPhoto() {
  const { row, photos } = useUnit().file;
  const [picked, setPicked] = useState<string | null>(null);
  const photo = photos.find(({ event_id }) => event_id === picked) ?? photos.find(({ side }) => side === 'board-front') ?? photos[0];
  return (
    <>
      <UnitTop id={row.id} number={row.number} name={row.name}>
        Distances and pads on a photo from straight above, or a scan. What stands above the board is seen a little too large.
      </UnitTop>
      <Section id="measure-photo" title="Which photo">
        {photos.length === 0 && <p>There is no photo of this unit yet.</p>}
        <PhotoPick
          photos={photos.map(({ event_id: key, hash, side }) => ({ key, hash, side }))}
          picked={photo?.event_id}
          onPick={setPicked}
        />
      </Section>
      {photo && (
        <MeasureDesk key={photo.event_id} url={photoUrl(photo.hash, 'view')} seen={photo.side === 'board-back' ? 'back' : 'front'} />
      )}
    </>
  );
}
