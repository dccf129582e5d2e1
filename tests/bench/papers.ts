import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type PaperFonts, pagesToPdf } from '../../src/output/pdf.ts';
import { paperSet } from '../../src/papers/paper-set.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { assess } from '../../src/report/assess.ts';
import { interleaved, kilobytes, line, ms, timed, times } from './measure.ts';

const font = (path: string): Uint8Array =>
  readFileSync(createRequire(import.meta.url).resolve(`@expo-google-fonts/source-sans-3/${path}`));

/** Pages and PDF. */
export const benchPapers = (plan: Plan): void => {
  const fonts: PaperFonts = {
    regular: font('400Regular/SourceSans3_400Regular.ttf'),
    semibold: font('600SemiBold/SourceSans3_600SemiBold.ttf'),
  };
  const assessment = assess(plan, { revision: 0 });
  const options = { revision: 'A', date: '', programVersion: '0' };
  const meta = { title: 'Bench', subject: '', author: '' };
  const { pages } = paperSet(plan, assessment, options);
  const plot = pages.slice(0, 1);
  let bytes = 0;
  const m = interleaved({
    pages: () => timed(() => paperSet(plan, assessment, options)),
    plot: () =>
      timed(() => {
        bytes = pagesToPdf(plot, fonts, meta).length;
      }),
    all: () => timed(() => pagesToPdf(pages, fonts, meta)),
  });
  line(`lay out the papers, ${pages.length} pages`, ms(m.pages));
  line('PDF of the plot', ms(m.plot), `${kilobytes(bytes)}, ${times(m.plot / m.pages)} the layout`);
  line('PDF of all papers', ms(m.all));
};
