// Made by symbols/compile.mjs from the drawings in symbols/. Change those, then run it again.
import type { CompiledSymbol } from './symbol-types.ts';

export const COMPILED_SYMBOLS: readonly CompiledSymbol[] = [
  {
    id: 'tungsten-fresnel',
    lengthMm: 320,
    widthMm: 280,
    box: [-160, -140, 160, 140],
    words: 'tungsten fresnel lens barn doors',
    paths: [
      {
        line: 'outline',
        d: 'M105 -100L-90 -100C-136.67 -100 -160 -76.67 -160 -30L-160 30C-160 76.67 -136.67 100 -90 100L105 100C125 33.33 125 -33.33 105 -100Z',
      },
      { line: 'outline', d: 'M105 -100L160 -140M105 100L160 140' },
      { line: 'detail', d: 'M-70 -55L10 -27.5L-70 0L10 27.5L-70 55' },
    ],
  },
  {
    id: 'tungsten-open-face',
    lengthMm: 250,
    widthMm: 230,
    box: [-125, -115, 125, 115],
    words: 'tungsten open face flood open',
    paths: [
      {
        line: 'outline',
        d: 'M125 -115L20 -75L-95 -75C-115 -75 -125 -65 -125 -45L-125 45C-125 65 -115 75 -95 75L20 75L125 115',
      },
      { line: 'outline', d: 'M20 -75L20 75' },
      { line: 'detail', d: 'M-75 -45L-15 -22.5L-75 0L-15 22.5L-75 45' },
    ],
  },
  {
    id: 'tungsten-par',
    lengthMm: 360,
    widthMm: 220,
    box: [-180, -110, 180, 110],
    words: 'tungsten par can parabolic',
    paths: [
      { line: 'outline', d: 'M180 -110L-60 -110L-150 -70L-180 -70L-180 70L-150 70L-60 110L180 110Z' },
      { line: 'detail', d: 'M-60 -110L-60 110M15 -55L95 -27.5L15 0L95 27.5L15 55' },
    ],
  },
  {
    id: 'par-bank',
    lengthMm: 290,
    widthMm: 660,
    box: [-130, -330, 160, 330],
    words: 'tungsten par bank blinder audience cells maxi',
    paths: [
      { line: 'outline', d: 'M115 -330L-130 -330L-130 330L115 330Z' },
      { line: 'outline', d: 'M115 -330L160 -330M115 330L160 330' },
      {
        line: 'detail',
        d: 'M-130 -110L115 -110M-130 110L115 110M-50 -55L30 -27.5L-50 0L30 27.5L-50 55M-50 -275L30 -247L-50 -220L30 -193L-50 -165M-50 165L30 193L-50 220L30 247L-50 275',
      },
    ],
  },
  {
    id: 'ellipsoidal',
    lengthMm: 660,
    widthMm: 240,
    box: [-330, -120, 330, 120],
    words: 'ellipsoidal profile spot shutter',
    paths: [
      {
        line: 'outline',
        d: 'M-330 -70C-330 -103.33 -313.33 -120 -280 -120L-140 -120L-60 -85L-20 -85L-20 -110L20 -110L20 -85L330 -95L330 95L20 85L20 110L-20 110L-20 85L-60 85L-140 120L-280 120C-313.33 120 -330 103.33 -330 70Z',
      },
      {
        line: 'detail',
        d: 'M230 -92C253.33 -30.67 253.33 30.67 230 92M-250 -65L-170 -32.5L-250 0L-170 32.5L-250 65',
      },
    ],
  },
  {
    id: 'softlight',
    lengthMm: 460,
    widthMm: 640,
    box: [-230, -320, 230, 320],
    words: 'tungsten soft softlight indirect',
    paths: [
      {
        line: 'outline',
        d: 'M230 -320L-30 -320C-163.33 -273.33 -230 -166.67 -230 0C-230 166.67 -163.33 273.33 -30 320L230 320Z',
      },
      {
        line: 'detail',
        d: 'M120 -320L120 320M-130 -95L-50 -63.33L-130 -31.67L-50 0L-130 31.67L-50 63.33L-130 95',
      },
    ],
  },
  {
    id: 'space-light',
    lengthMm: 700,
    widthMm: 700,
    box: [-350, -350, 350, 350],
    words: 'space light silk lantern overhead tungsten',
    paths: [
      {
        line: 'outline',
        d: 'M350 0C350 193.3 193.3 350 0 350C-193.3 350 -350 193.3 -350 0C-350 -193.3 -193.3 -350 0 -350C193.3 -350 350 -193.3 350 0Z',
      },
      {
        line: 'detail',
        d: 'M150 0C150 82.84 82.84 150 0 150C-82.84 150 -150 82.84 -150 0C-150 -82.84 -82.84 -150 0 -150C82.84 -150 150 -82.84 150 0ZM0 -150L0 -270M130 -75L234 -135M130 75L234 135M0 150L0 270M-130 75L-234 135M-130 -75L-234 -135',
      },
    ],
  },
  {
    id: 'discharge-fresnel',
    lengthMm: 520,
    widthMm: 460,
    box: [-260, -230, 260, 230],
    words: 'discharge daylight arc metal halide fresnel lens',
    paths: [
      {
        line: 'outline',
        d: 'M150 -170L-170 -170L-260 -110L-260 110L-170 170L150 170C186.67 56.67 186.67 -56.67 150 -170Z',
      },
      { line: 'outline', d: 'M150 -170L260 -230M150 170L260 230' },
      { line: 'detail', d: 'M-125 -75L25 75M-125 75L25 -75' },
    ],
  },
  {
    id: 'discharge-par',
    lengthMm: 400,
    widthMm: 380,
    box: [-200, -190, 200, 190],
    words: 'discharge daylight arc metal halide par open',
    paths: [
      {
        line: 'outline',
        d: 'M-200 -68L-96 -68L-52 -129L52 -171L200 -190L200 190L52 171L-52 129L-96 68L-200 68Z',
      },
      { line: 'detail', d: 'M-52 -129L-52 129M52 -171L52 171M74 -46L178 46M74 46L178 -46' },
    ],
  },
  {
    id: 'led-fresnel',
    lengthMm: 400,
    widthMm: 300,
    box: [-200, -150, 200, 150],
    words: 'led fresnel lens daylight bicolour',
    paths: [
      { line: 'outline', d: 'M130 -110L-200 -110L-200 110L130 110C153.33 36.67 153.33 -36.67 130 -110Z' },
      { line: 'outline', d: 'M130 -110L200 -150M130 110L200 150' },
      { line: 'detail', d: 'M-200 -66L-120 -66M-200 -22L-120 -22M-200 22L-120 22M-200 66L-120 66' },
      {
        line: 'solid',
        d: 'M25 -50C25 -38.95 16.05 -30 5 -30C-6.05 -30 -15 -38.95 -15 -50C-15 -61.05 -6.05 -70 5 -70C16.05 -70 25 -61.05 25 -50ZM25 50C25 61.05 16.05 70 5 70C-6.05 70 -15 61.05 -15 50C-15 38.95 -6.05 30 5 30C16.05 30 25 38.95 25 50ZM80 0C80 11.05 71.05 20 60 20C48.95 20 40 11.05 40 0C40 -11.05 48.95 -20 60 -20C71.05 -20 80 -11.05 80 0Z',
      },
    ],
  },
  {
    id: 'led-spot',
    lengthMm: 400,
    widthMm: 250,
    box: [-200, -125, 200, 125],
    words: 'led spot point source monolight reflector',
    paths: [
      { line: 'outline', d: 'M200 -125L20 -62L20 62L200 125Z' },
      { line: 'outline', d: 'M-200 -78L20 -78L20 78L-200 78Z' },
      {
        line: 'solid',
        d: 'M-71 -32C-71 -21.51 -79.51 -13 -90 -13C-100.49 -13 -109 -21.51 -109 -32C-109 -42.49 -100.49 -51 -90 -51C-79.51 -51 -71 -42.49 -71 -32ZM-71 32C-71 42.49 -79.51 51 -90 51C-100.49 51 -109 42.49 -109 32C-109 21.51 -100.49 13 -90 13C-79.51 13 -71 21.51 -71 32Z',
      },
      { line: 'detail', d: 'M60 -76L60 76' },
    ],
  },
  {
    id: 'led-panel',
    lengthMm: 140,
    widthMm: 600,
    box: [-70, -300, 70, 300],
    words: 'led panel soft flat bicolour colour',
    paths: [
      {
        line: 'outline',
        d: 'M-58 -300L58 -300C64.63 -300 70 -294.63 70 -288L70 288C70 294.63 64.63 300 58 300L-58 300C-64.63 300 -70 294.63 -70 288L-70 -288C-70 -294.63 -64.63 -300 -58 -300Z',
      },
      { line: 'detail', d: 'M30 -300L30 300' },
      {
        line: 'solid',
        d: 'M10 -200C10 -183.43 -3.43 -170 -20 -170C-36.57 -170 -50 -183.43 -50 -200C-50 -216.57 -36.57 -230 -20 -230C-3.43 -230 10 -216.57 10 -200ZM10 -100C10 -83.43 -3.43 -70 -20 -70C-36.57 -70 -50 -83.43 -50 -100C-50 -116.57 -36.57 -130 -20 -130C-3.43 -130 10 -116.57 10 -100ZM10 0C10 16.57 -3.43 30 -20 30C-36.57 30 -50 16.57 -50 0C-50 -16.57 -36.57 -30 -20 -30C-3.43 -30 10 -16.57 10 0ZM10 100C10 116.57 -3.43 130 -20 130C-36.57 130 -50 116.57 -50 100C-50 83.43 -36.57 70 -20 70C-3.43 70 10 83.43 10 100ZM10 200C10 216.57 -3.43 230 -20 230C-36.57 230 -50 216.57 -50 200C-50 183.43 -36.57 170 -20 170C-3.43 170 10 183.43 10 200Z',
      },
    ],
  },
  {
    id: 'led-panel-long',
    lengthMm: 140,
    widthMm: 1200,
    box: [-70, -600, 70, 600],
    words: 'led panel long double soft',
    paths: [
      {
        line: 'outline',
        d: 'M-58 -600L58 -600C64.63 -600 70 -594.63 70 -588L70 588C70 594.63 64.63 600 58 600L-58 600C-64.63 600 -70 594.63 -70 588L-70 -588C-70 -594.63 -64.63 -600 -58 -600Z',
      },
      { line: 'detail', d: 'M-70 0L70 0' },
      {
        line: 'solid',
        d: 'M48 -430C48 -403.49 26.51 -382 0 -382C-26.51 -382 -48 -403.49 -48 -430C-48 -456.51 -26.51 -478 0 -478C26.51 -478 48 -456.51 48 -430ZM48 -170C48 -143.49 26.51 -122 0 -122C-26.51 -122 -48 -143.49 -48 -170C-48 -196.51 -26.51 -218 0 -218C26.51 -218 48 -196.51 48 -170ZM48 170C48 196.51 26.51 218 0 218C-26.51 218 -48 196.51 -48 170C-48 143.49 -26.51 122 0 122C26.51 122 48 143.49 48 170ZM48 430C48 456.51 26.51 478 0 478C-26.51 478 -48 456.51 -48 430C-48 403.49 -26.51 382 0 382C26.51 382 48 403.49 48 430ZM-70 -600L70 -600L70 -560L-70 -560ZM-70 560L70 560L70 600L-70 600Z',
      },
    ],
  },
  {
    id: 'led-tube',
    lengthMm: 60,
    widthMm: 1200,
    box: [-30, -600, 30, 600],
    words: 'led tube stick battery colour',
    paths: [
      { line: 'outline', d: 'M-10 -600L30 -600L30 600L-10 600Z' },
      {
        line: 'solid',
        d: 'M-30 -430L-10 -430L-10 -230L-30 -230ZM-30 230L-10 230L-10 430L-30 430ZM0 -430L20 -430L20 -100L0 -100ZM0 100L20 100L20 430L0 430Z',
      },
    ],
  },
  {
    id: 'pixel-tube',
    lengthMm: 60,
    widthMm: 1200,
    box: [-30, -600, 30, 600],
    words: 'pixel tube led tube pixels effects',
    paths: [
      { line: 'outline', d: 'M-30 -600L30 -600L30 600L-30 600Z' },
      {
        line: 'solid',
        d: 'M-30 -600L0 -600L0 -400L-30 -400ZM0 -400L30 -400L30 -200L0 -200ZM-30 -200L0 -200L0 0L-30 0ZM0 0L30 0L30 200L0 200ZM-30 200L0 200L0 400L-30 400ZM0 400L30 400L30 600L0 600Z',
      },
    ],
  },
  {
    id: 'pixel-bar',
    lengthMm: 165,
    widthMm: 1000,
    box: [-90, -500, 75, 500],
    words: 'pixel bar batten led strip',
    paths: [
      { line: 'outline', d: 'M-35 -500L75 -500L75 500L-35 500Z' },
      { line: 'detail', d: 'M-35 -167L75 -167M-35 167L75 167' },
      {
        line: 'solid',
        d: 'M65 -333C65 -308.15 44.85 -288 20 -288C-4.85 -288 -25 -308.15 -25 -333C-25 -357.85 -4.85 -378 20 -378C44.85 -378 65 -357.85 65 -333ZM65 0C65 24.85 44.85 45 20 45C-4.85 45 -25 24.85 -25 0C-25 -24.85 -4.85 -45 20 -45C44.85 -45 65 -24.85 65 0ZM65 333C65 357.85 44.85 378 20 378C-4.85 378 -25 357.85 -25 333C-25 308.15 -4.85 288 20 288C44.85 288 65 308.15 65 333Z',
      },
      { line: 'outline', d: 'M-35 -400L-90 -400L-90 -250L-35 -250M-35 400L-90 400L-90 250L-35 250' },
    ],
  },
  {
    id: 'led-mat',
    lengthMm: 80,
    widthMm: 600,
    box: [-40, -300, 40, 300],
    words: 'led mat flexible cloth light tile',
    paths: [
      { line: 'outline', d: 'M-40 -300L40 -300L40 300L-40 300Z' },
      { line: 'detail', d: 'M-40 -300L40 -150L-40 0L40 150L-40 300M40 -300L-40 -150L40 0L-40 150L40 300' },
    ],
  },
  {
    id: 'balloon',
    lengthMm: 2500,
    widthMm: 2500,
    box: [-1250, -1250, 1250, 1250],
    words: 'balloon helium air sphere',
    paths: [
      {
        line: 'outline',
        d: 'M1250 0C1250 690.36 690.36 1250 0 1250C-690.36 1250 -1250 690.36 -1250 0C-1250 -690.36 -690.36 -1250 0 -1250C690.36 -1250 1250 -690.36 1250 0Z',
      },
      {
        line: 'detail',
        d: 'M-1250 0C-700 -520 700 -520 1250 0C700 520 -700 520 -1250 0ZM0 -1250C-520 -700 -520 700 0 1250C520 700 520 -700 0 -1250Z',
      },
      {
        line: 'solid',
        d: 'M90 0C90 49.71 49.71 90 0 90C-49.71 90 -90 49.71 -90 0C-90 -49.71 -49.71 -90 0 -90C49.71 -90 90 -49.71 90 0Z',
      },
    ],
  },
  {
    id: 'lantern',
    lengthMm: 500,
    widthMm: 500,
    box: [-250, -250, 250, 250],
    words: 'lantern soft globe china paper ball',
    paths: [
      {
        line: 'outline',
        d: 'M250 0C250 138.07 138.07 250 0 250C-138.07 250 -250 138.07 -250 0C-250 -138.07 -138.07 -250 0 -250C138.07 -250 250 -138.07 250 0Z',
      },
      {
        line: 'detail',
        d: 'M-175 -178C-58.33 -119.33 58.33 -119.33 175 -178M-250 0L250 0M-175 178C-58.33 119.33 58.33 119.33 175 178',
      },
    ],
  },
  {
    id: 'practical-lamp',
    lengthMm: 300,
    widthMm: 300,
    box: [-150, -150, 150, 150],
    words: 'practical lamp table shade',
    paths: [
      { line: 'outline', d: 'M-150 0L150 0M0 -150L0 150' },
      {
        line: 'outline',
        d: 'M98 0C98 54.12 54.12 98 0 98C-54.12 98 -98 54.12 -98 0C-98 -54.12 -54.12 -98 0 -98C54.12 -98 98 -54.12 98 0Z',
      },
      {
        line: 'solid',
        d: 'M26 0C26 14.36 14.36 26 0 26C-14.36 26 -26 14.36 -26 0C-26 -14.36 -14.36 -26 0 -26C14.36 -26 26 -14.36 26 0Z',
      },
    ],
  },
  {
    id: 'practical-bulb',
    lengthMm: 130,
    widthMm: 130,
    box: [-65, -65, 65, 65],
    words: 'practical bulb globe lamp string',
    paths: [
      {
        line: 'outline',
        d: 'M65 0C65 35.9 35.9 65 0 65C-35.9 65 -65 35.9 -65 0C-65 -35.9 -35.9 -65 0 -65C35.9 -65 65 -35.9 65 0Z',
      },
      { line: 'detail', d: 'M-46 -46L46 46M-46 46L46 -46' },
    ],
  },
  {
    id: 'cyc-flood',
    lengthMm: 260,
    widthMm: 380,
    box: [-130, -190, 130, 190],
    words: 'cyc cyclorama flood wash tungsten asymmetric',
    paths: [
      { line: 'outline', d: 'M130 -190L-20 -190L-130 -110L-130 110L-20 190L130 190L80 0Z' },
      { line: 'detail', d: 'M-70 -85L10 -56.67L-70 -28.33L10 0L-70 28.33L10 56.67L-70 85' },
    ],
  },
  {
    id: 'fluorescent-bank',
    lengthMm: 180,
    widthMm: 660,
    box: [-90, -330, 90, 330],
    words: 'fluorescent bank tubes soft compact',
    paths: [
      { line: 'outline', d: 'M90 -330L-90 -220L-90 220L90 330Z' },
      { line: 'detail', d: 'M-35 -190L-35 190M10 -190L10 190M55 -190L55 190' },
    ],
  },
  {
    id: 'led-strip',
    lengthMm: 40,
    widthMm: 2000,
    box: [-20, -1000, 20, 1000],
    words: 'led strip ribbon tape cove',
    paths: [
      {
        line: 'solid',
        d: 'M-20 -1000L20 -1000L20 -780L-20 -780ZM-20 -600L20 -600L20 -380L-20 -380ZM-20 -200L20 -200L20 20L-20 20ZM-20 200L20 200L20 420L-20 420ZM-20 600L20 600L20 820L-20 820Z',
      },
      { line: 'detail', d: 'M0 -1000L0 1000' },
    ],
  },
  {
    id: 'moving-head',
    lengthMm: 460,
    widthMm: 380,
    box: [-230, -190, 230, 190],
    words: 'moving head automated yoke spot wash',
    paths: [
      {
        line: 'outline',
        d: 'M-214 -150L-66 -150C-57.16 -150 -50 -142.84 -50 -134L-50 134C-50 142.84 -57.16 150 -66 150L-214 150C-222.84 150 -230 142.84 -230 134L-230 -134C-230 -142.84 -222.84 -150 -214 -150Z',
      },
      { line: 'outline', d: 'M-50 -150L-50 -190L60 -190L60 -120M-50 150L-50 190L60 190L60 120' },
      {
        line: 'outline',
        d: 'M230 -90L120 -120L0 -120C-33.33 -120 -50 -100 -50 -60L-50 60C-50 100 -33.33 120 0 120L120 120L230 90Z',
      },
      {
        line: 'solid',
        d: 'M115 -45C115 -33.95 106.05 -25 95 -25C83.95 -25 75 -33.95 75 -45C75 -56.05 83.95 -65 95 -65C106.05 -65 115 -56.05 115 -45ZM115 45C115 56.05 106.05 65 95 65C83.95 65 75 56.05 75 45C75 33.95 83.95 25 95 25C106.05 25 115 33.95 115 45ZM60 0C60 11.05 51.05 20 40 20C28.95 20 20 11.05 20 0C20 -11.05 28.95 -20 40 -20C51.05 -20 60 -11.05 60 0Z',
      },
    ],
  },
  {
    id: 'led-par',
    lengthMm: 260,
    widthMm: 230,
    box: [-130, -115, 130, 115],
    words: 'led par can wash colour',
    paths: [
      {
        line: 'outline',
        d: 'M130 -115L-20 -115C-80.75 -115 -130 -63.51 -130 0C-130 63.51 -80.75 115 -20 115L130 115Z',
      },
      { line: 'detail', d: 'M95 -115L95 115' },
      {
        line: 'solid',
        d: 'M-38 0C-38 12.15 -47.85 22 -60 22C-72.15 22 -82 12.15 -82 0C-82 -12.15 -72.15 -22 -60 -22C-47.85 -22 -38 -12.15 -38 0ZM42 -55C42 -42.85 32.15 -33 20 -33C7.85 -33 -2 -42.85 -2 -55C-2 -67.15 7.85 -77 20 -77C32.15 -77 42 -67.15 42 -55ZM42 55C42 67.15 32.15 77 20 77C7.85 77 -2 67.15 -2 55C-2 42.85 7.85 33 20 33C32.15 33 42 42.85 42 55Z',
      },
    ],
  },
  {
    id: 'ballast',
    lengthMm: 400,
    widthMm: 220,
    box: [-200, -110, 200, 110],
    words: 'ballast supply discharge electronic',
    paths: [
      { line: 'outline', d: 'M-200 -110L200 -110L200 110L-200 110Z' },
      { line: 'detail', d: 'M150 -110L150 110M-110 0C-80 -63.33 -50 -63.33 -20 0C10 63.33 40 63.33 70 0' },
      { line: 'solid', d: 'M-200 -110L-162 -110L-162 110L-200 110Z' },
    ],
  },
  {
    id: 'stand',
    lengthMm: 900,
    widthMm: 900,
    box: [-450, -450, 450, 450],
    words: 'stand tripod legs',
    paths: [
      {
        line: 'solid',
        d: 'M45 0C45 24.85 24.85 45 0 45C-24.85 45 -45 24.85 -45 0C-45 -24.85 -24.85 -45 0 -45C24.85 -45 45 -24.85 45 0Z',
      },
      {
        line: 'detail',
        d: 'M0 0L450 0M0 0L-225 390M0 0L-225 -390M450 0C450 248.53 248.53 450 0 450C-248.53 450 -450 248.53 -450 0C-450 -248.53 -248.53 -450 0 -450C248.53 -450 450 -248.53 450 0Z',
      },
    ],
  },
  {
    id: 'stand-heavy',
    lengthMm: 1200,
    widthMm: 1200,
    box: [-600, -600, 600, 600],
    words: 'stand heavy combo junior',
    paths: [
      { line: 'outline', d: 'M0 55L560 55L560 -55L0 -55Z' },
      { line: 'outline', d: 'M-47.6 -27.5L-327.6 457.5L-232.4 512.5L47.6 27.5Z' },
      { line: 'outline', d: 'M47.6 -27.5L-232.4 -512.5L-327.6 -457.5L-47.6 27.5Z' },
      {
        line: 'outline',
        d: 'M150 0C150 82.84 82.84 150 0 150C-82.84 150 -150 82.84 -150 0C-150 -82.84 -82.84 -150 0 -150C82.84 -150 150 -82.84 150 0Z',
      },
      {
        line: 'solid',
        d: 'M60 0C60 33.14 33.14 60 0 60C-33.14 60 -60 33.14 -60 0C-60 -33.14 -33.14 -60 0 -60C33.14 -60 60 -33.14 60 0Z',
      },
      {
        line: 'detail',
        d: 'M600 0C600 331.37 331.37 600 0 600C-331.37 600 -600 331.37 -600 0C-600 -331.37 -331.37 -600 0 -600C331.37 -600 600 -331.37 600 0Z',
      },
    ],
  },
  {
    id: 'generator',
    lengthMm: 3400,
    widthMm: 1800,
    box: [-1700, -900, 1700, 900],
    words: 'generator set trailer truck power',
    paths: [
      { line: 'outline', d: 'M-1500 -900L1300 -900L1300 900L-1500 900Z' },
      { line: 'outline', d: 'M1300 -500L1700 0L1300 500' },
      { line: 'detail', d: 'M-1700 -500L-1500 -500M-1700 500L-1500 500M-1700 -700L-1700 700' },
      {
        line: 'outline',
        d: 'M470 0C470 342.42 192.42 620 -150 620C-492.42 620 -770 342.42 -770 0C-770 -342.42 -492.42 -620 -150 -620C192.42 -620 470 -342.42 470 0Z',
      },
      {
        line: 'detail',
        d: 'M150 -270C-20 -430 -480 -380 -480 -30C-480 320 -40 340 140 180L140 0L-90 0M-420 460C-333.33 386.67 -243.33 386.67 -150 460C-56.67 533.33 33.33 533.33 120 460',
      },
    ],
  },
  {
    id: 'house-panel',
    lengthMm: 150,
    widthMm: 500,
    box: [-75, -250, 75, 250],
    words: 'house panel panelboard distribution breaker',
    paths: [
      { line: 'outline', d: 'M-75 -250L75 -250L75 250L-75 250Z' },
      { line: 'solid', d: 'M-75 -250L75 250L-75 250Z' },
    ],
  },
  {
    id: 'service',
    lengthMm: 300,
    widthMm: 500,
    box: [-150, -250, 150, 250],
    words: 'service tie-in company switch supply disconnect',
    paths: [
      {
        line: 'outline',
        d: 'M-142 -250L142 -250C146.42 -250 150 -246.42 150 -242L150 242C150 246.42 146.42 250 142 250L-142 250C-146.42 250 -150 246.42 -150 242L-150 -242C-150 -246.42 -146.42 -250 -142 -250Z',
      },
      { line: 'detail', d: 'M-150 -170L150 -170M-70 0L40 0M-70 110L40 110' },
      { line: 'solid', d: 'M40 -40L110 0L40 40ZM40 70L110 110L40 150Z' },
    ],
  },
  {
    id: 'wall-circuit',
    lengthMm: 180,
    widthMm: 240,
    box: [-90, -120, 90, 120],
    words: 'wall circuit branch house',
    paths: [
      {
        line: 'outline',
        d: 'M-82 -120L82 -120C86.42 -120 90 -116.42 90 -112L90 112C90 116.42 86.42 120 82 120L-82 120C-86.42 120 -90 116.42 -90 112L-90 -112C-90 -116.42 -86.42 -120 -82 -120Z',
      },
      { line: 'detail', d: 'M-55 0C-37 -40 -18.67 -40 0 0C18.67 40 37 40 55 0' },
    ],
  },
  {
    id: 'wall-outlet',
    lengthMm: 135,
    widthMm: 200,
    box: [0, -100, 135, 100],
    words: 'wall outlet receptacle socket house',
    paths: [
      { line: 'outline', d: 'M0 -100C55.23 -100 100 -55.23 100 0C100 55.23 55.23 100 0 100Z' },
      { line: 'outline', d: 'M100 -70L100 70' },
      { line: 'detail', d: 'M100 0L135 0' },
    ],
  },
  {
    id: 'power-station',
    lengthMm: 360,
    widthMm: 300,
    box: [-180, -150, 180, 150],
    words: 'power station battery portable inverter',
    paths: [
      {
        line: 'outline',
        d: 'M-160 -150L160 -150C171.05 -150 180 -141.05 180 -130L180 130C180 141.05 171.05 150 160 150L-160 150C-171.05 150 -180 141.05 -180 130L-180 -130C-180 -141.05 -171.05 -150 -160 -150Z',
      },
      {
        line: 'detail',
        d: 'M-110 0L-50 0M-50 -75L-50 75M-15 -40L-15 40M25 -75L25 75M60 -40L60 40M60 0L110 0',
      },
    ],
  },
  {
    id: 'box-small',
    lengthMm: 250,
    widthMm: 350,
    box: [-125, -175, 125, 175],
    words: 'distribution box small outlets ways',
    paths: [
      {
        line: 'outline',
        d: 'M-115 -175L115 -175C120.52 -175 125 -170.52 125 -165L125 165C125 170.52 120.52 175 115 175L-115 175C-120.52 175 -125 170.52 -125 165L-125 -165C-125 -170.52 -120.52 -175 -115 -175Z',
      },
      {
        line: 'detail',
        d: 'M125 -116.67L70 -116.67M125 -58.33L70 -58.33M125 0L70 0M125 58.33L70 58.33M125 116.67L70 116.67',
      },
    ],
  },
  {
    id: 'box-large',
    lengthMm: 450,
    widthMm: 700,
    box: [-225, -350, 225, 350],
    words: 'distribution box large rack main ways',
    paths: [
      {
        line: 'outline',
        d: 'M-215 -350L215 -350C220.52 -350 225 -345.52 225 -340L225 340C225 345.52 220.52 350 215 350L-215 350C-220.52 350 -225 345.52 -225 340L-225 -340C-225 -345.52 -220.52 -350 -215 -350Z',
      },
      {
        line: 'detail',
        d: 'M-150 -350L-150 350M225 -262.5L145 -262.5M225 -175L145 -175M225 -87.5L145 -87.5M225 0L145 0M225 87.5L145 87.5M225 175L145 175M225 262.5L145 262.5',
      },
    ],
  },
  {
    id: 'camera',
    lengthMm: 620,
    widthMm: 260,
    box: [-330, -130, 290, 130],
    words: 'camera lens matte box',
    paths: [
      {
        line: 'outline',
        d: 'M-180 -110L70 -110L70 -60L160 -55L160 -75L200 -75L290 -130L290 130L200 75L160 75L160 55L70 60L70 110L-180 110Z',
      },
      { line: 'outline', d: 'M-180 -80L-330 -65L-330 65L-180 80' },
      { line: 'detail', d: 'M70 -60L70 60M200 -75L200 75' },
      { line: 'solid', d: 'M10 -30L40 0L10 30Z' },
      { line: 'detail', d: 'M-120 -110L-120 -130L-20 -130L-20 -110' },
    ],
  },
  {
    id: 'talent-mark',
    lengthMm: 360,
    widthMm: 360,
    box: [-180, -180, 180, 180],
    words: 'talent actor mark person',
    paths: [
      {
        line: 'outline',
        d: 'M180 0C180 99.41 99.41 180 0 180C-99.41 180 -180 99.41 -180 0C-180 -99.41 -99.41 -180 0 -180C99.41 -180 180 -99.41 180 0Z',
      },
      { line: 'detail', d: 'M-110 0L110 0M0 -110L0 110' },
      { line: 'solid', d: 'M180 0L120 -32L120 32Z' },
    ],
  },
  {
    id: 'note-mark',
    lengthMm: 300,
    widthMm: 300,
    box: [-150, -150, 150, 150],
    words: 'note remark pin',
    paths: [
      { line: 'outline', d: 'M-150 -150L60 -150L150 -60L150 150L-150 150Z' },
      { line: 'detail', d: 'M60 -150L60 -60L150 -60M-90 0L90 0M-90 75L90 75' },
    ],
  },
  {
    id: 'vehicle',
    lengthMm: 4400,
    widthMm: 1800,
    box: [-2200, -900, 2200, 900],
    words: 'vehicle car picture automobile',
    paths: [
      {
        line: 'outline',
        d: 'M-2200 -600C-2200 -800 -2083.33 -900 -1850 -900L1500 -900C1966.67 -886.67 2200 -736.67 2200 -450L2200 450C2200 736.67 1966.67 886.67 1500 900L-1850 900C-2083.33 900 -2200 800 -2200 600Z',
      },
      {
        line: 'detail',
        d: 'M700 -740C900 -246.67 900 246.67 700 740L350 600C436.67 200 436.67 -200 350 -600ZM-1450 -720C-1583.33 -240 -1583.33 240 -1450 720L-1150 600C-1216.67 200 -1216.67 -200 -1150 -600ZM350 -600L-1150 -600M350 600L-1150 600M600 -900L540 -900L440 -900L440 -900M600 900L540 900L440 900L440 900',
      },
    ],
  },
  {
    id: 'chair',
    lengthMm: 430,
    widthMm: 460,
    box: [-230, -230, 200, 230],
    words: 'chair seat dining',
    paths: [
      { line: 'outline', d: 'M-170 -210L200 -230L200 230L-170 210Z' },
      { line: 'outline', d: 'M-230 -215C-230 -71.67 -230 71.67 -230 215L-170 210L-170 -210Z' },
    ],
  },
  {
    id: 'table',
    lengthMm: 900,
    widthMm: 1600,
    box: [-450, -800, 450, 800],
    words: 'table desk dining',
    paths: [
      {
        line: 'outline',
        d: 'M-430 -800L430 -800C441.05 -800 450 -791.05 450 -780L450 780C450 791.05 441.05 800 430 800L-430 800C-441.05 800 -450 791.05 -450 780L-450 -780C-450 -791.05 -441.05 -800 -430 -800Z',
      },
    ],
  },
  {
    id: 'sofa',
    lengthMm: 860,
    widthMm: 1900,
    box: [-430, -950, 430, 950],
    words: 'sofa couch settee',
    paths: [
      {
        line: 'outline',
        d: 'M-360 -950L360 -950C398.66 -950 430 -918.66 430 -880L430 880C430 918.66 398.66 950 360 950L-360 950C-398.66 950 -430 918.66 -430 880L-430 -880C-430 -918.66 -398.66 -950 -360 -950Z',
      },
      { line: 'detail', d: 'M430 -760L-200 -760L-200 760L430 760M-200 0L430 0' },
    ],
  },
  {
    id: 'unit-plain',
    lengthMm: 300,
    widthMm: 300,
    box: [-150, -150, 150, 150],
    words: 'plain unknown generic',
    paths: [
      { line: 'outline', d: 'M-150 -150L150 -150L150 150L-150 150Z' },
      { line: 'solid', d: 'M150 0L90 -45L90 45Z' },
    ],
  },
  {
    id: 'flag',
    lengthMm: 160,
    widthMm: 1200,
    box: [-80, -600, 80, 600],
    words: 'flag cutter solid black floppy grip',
    paths: [
      { line: 'outline', d: 'M-80 -600L80 -600L80 600L-80 600Z' },
      { line: 'solid', d: 'M-45 -560L45 -560L45 560L-45 560Z' },
    ],
  },
  {
    id: 'net',
    lengthMm: 160,
    widthMm: 1200,
    box: [-80, -600, 80, 600],
    words: 'net scrim single double grip',
    paths: [
      { line: 'outline', d: 'M-80 -600L80 -600L80 600L-80 600Z' },
      {
        line: 'detail',
        d: 'M-80 -600L80 -500L-80 -400L80 -300L-80 -200L80 -100L-80 0L80 100L-80 200L80 300L-80 400L80 500L-80 600M80 -600L-80 -500L80 -400L-80 -300L80 -200L-80 -100L80 0L-80 100L80 200L-80 300L80 400L-80 500L80 600',
      },
    ],
  },
  {
    id: 'diffusion',
    lengthMm: 160,
    widthMm: 1200,
    box: [-80, -600, 80, 600],
    words: 'diffusion frame silk opal grid gel grip',
    paths: [
      { line: 'outline', d: 'M-80 -600L80 -600L80 600L-80 600Z' },
      {
        line: 'detail',
        d: 'M-80 -460L80 -570M-80 -310L80 -420M-80 -160L80 -270M-80 -10L80 -120M-80 140L80 30M-80 290L80 180M-80 440L80 330M-80 590L80 480',
      },
    ],
  },
  {
    id: 'bounce',
    lengthMm: 160,
    widthMm: 1200,
    box: [-80, -600, 80, 600],
    words: 'bounce board reflector poly foam mirror grip',
    paths: [
      { line: 'outline', d: 'M-80 -600L80 -600L80 600L-80 600Z' },
      { line: 'solid', d: 'M-80 -600L-15 -600L-15 600L-80 600Z' },
      { line: 'detail', d: 'M20 -420L80 -300L20 -180M20 180L80 300L20 420' },
    ],
  },
  {
    id: 'frame',
    lengthMm: 260,
    widthMm: 3000,
    box: [-130, -1500, 130, 1500],
    words: 'frame cloth butterfly overhead silk solid grip',
    paths: [
      { line: 'outline', d: 'M-60 -1370L60 -1370L60 1370L-60 1370Z' },
      { line: 'detail', d: 'M0 -1370L0 1370M-60 -450L60 -450M-60 450L60 450' },
      { line: 'outline', d: 'M-130 -1500L130 -1500L130 -1370L-130 -1370Z' },
      { line: 'outline', d: 'M-130 1370L130 1370L130 1500L-130 1500Z' },
      {
        line: 'solid',
        d: 'M42 -1435C42 -1411.8 23.2 -1393 0 -1393C-23.2 -1393 -42 -1411.8 -42 -1435C-42 -1458.2 -23.2 -1477 0 -1477C23.2 -1477 42 -1458.2 42 -1435ZM42 1435C42 1458.2 23.2 1477 0 1477C-23.2 1477 -42 1458.2 -42 1435C-42 1411.8 -23.2 1393 0 1393C23.2 1393 42 1411.8 42 1435Z',
      },
    ],
  },
  {
    id: 'cloth',
    lengthMm: 300,
    widthMm: 1200,
    box: [-150, -600, 150, 600],
    words: 'cloth rag silk solid muslin net for a frame',
    paths: [
      {
        line: 'outline',
        d: 'M-150 -600C50 -500 50 -400 -150 -300C50 -200 50 -100 -150 0C50 100 50 200 -150 300C50 400 50 500 -150 600L0 600C200 500 200 400 0 300C200 200 200 100 0 0C200 -100 200 -200 0 -300C200 -400 200 -500 0 -600Z',
      },
    ],
  },
  {
    id: 'sand-bag',
    lengthMm: 450,
    widthMm: 250,
    box: [-225, -125, 225, 125],
    words: 'sand bag shot ballast weight',
    paths: [
      { line: 'outline', d: 'M-225 -95L-195 -125L-30 -125L-30 125L-195 125L-225 95Z' },
      { line: 'outline', d: 'M30 -125L195 -125L225 -95L225 95L195 125L30 125Z' },
      { line: 'detail', d: 'M-30 -45L30 -45M-30 45L30 45' },
      {
        line: 'solid',
        d: 'M-100 0C-100 16.57 -113.43 30 -130 30C-146.57 30 -160 16.57 -160 0C-160 -16.57 -146.57 -30 -130 -30C-113.43 -30 -100 -16.57 -100 0ZM160 0C160 16.57 146.57 30 130 30C113.43 30 100 16.57 100 0C100 -16.57 113.43 -30 130 -30C146.57 -30 160 -16.57 160 0Z',
      },
    ],
  },
  {
    id: 'apple-box',
    lengthMm: 310,
    widthMm: 510,
    box: [-155, -255, 155, 255],
    words: 'apple box full half quarter pancake',
    paths: [
      { line: 'outline', d: 'M-155 -255L155 -255L155 255L-155 255Z' },
      { line: 'outline', d: 'M-20 -90L20 -90L20 90L-20 90Z' },
      { line: 'detail', d: 'M-155 -255L-20 -90M155 -255L20 -90M-155 255L-20 90M155 255L20 90' },
    ],
  },
  {
    id: 'arm',
    lengthMm: 1000,
    widthMm: 130,
    box: [-65, -65, 935, 65],
    words: 'arm grip gobo offset articulated',
    paths: [
      {
        line: 'outline',
        d: 'M65 0C65 35.9 35.9 65 0 65C-35.9 65 -65 35.9 -65 0C-65 -35.9 -35.9 -65 0 -65C35.9 -65 65 -35.9 65 0Z',
      },
      {
        line: 'solid',
        d: 'M28 0C28 15.46 15.46 28 0 28C-15.46 28 -28 15.46 -28 0C-28 -15.46 -15.46 -28 0 -28C15.46 -28 28 -15.46 28 0Z',
      },
      { line: 'outline', d: 'M65 -18L880 -18L880 18L65 18Z' },
      { line: 'outline', d: 'M880 -45L935 -45L935 45L880 45Z' },
    ],
  },
  {
    id: 'boom',
    lengthMm: 2385,
    widthMm: 300,
    box: [-620, -150, 1765, 150],
    words: 'boom arm menace long counterweight',
    paths: [
      { line: 'outline', d: 'M110 -35L1500 -35L1500 35L110 35Z' },
      {
        line: 'outline',
        d: 'M150 0C150 82.84 82.84 150 0 150C-82.84 150 -150 82.84 -150 0C-150 -82.84 -82.84 -150 0 -150C82.84 -150 150 -82.84 150 0Z',
      },
      {
        line: 'solid',
        d: 'M60 0C60 33.14 33.14 60 0 60C-33.14 60 -60 33.14 -60 0C-60 -33.14 -33.14 -60 0 -60C33.14 -60 60 -33.14 60 0Z',
      },
      { line: 'detail', d: 'M1500 0L1690 0' },
      {
        line: 'solid',
        d: 'M1765 0C1765 35.9 1735.9 65 1700 65C1664.1 65 1635 35.9 1635 0C1635 -35.9 1664.1 -65 1700 -65C1735.9 -65 1765 -35.9 1765 0ZM-620 -150L-400 -150L-400 150L-620 150Z',
      },
      { line: 'outline', d: 'M-110 -35L-400 -35M-110 35L-400 35' },
    ],
  },
  {
    id: 'clamp',
    lengthMm: 140,
    widthMm: 120,
    box: [-70, -60, 70, 60],
    words: 'clamp jaw coupler hook head adapter',
    paths: [
      { line: 'outline', d: 'M-70 -60L30 -60L30 -25L-35 -25L-35 25L30 25L30 60L-70 60Z' },
      {
        line: 'solid',
        d: 'M20 0C20 8.28 13.28 15 5 15C-3.28 15 -10 8.28 -10 0C-10 -8.28 -3.28 -15 5 -15C13.28 -15 20 -8.28 20 0Z',
      },
      { line: 'detail', d: 'M30 42L70 42' },
    ],
  },
  {
    id: 'plate',
    lengthMm: 90,
    widthMm: 140,
    box: [-20, -70, 70, 70],
    words: 'plate wall nail pigeon pin',
    paths: [
      { line: 'outline', d: 'M-20 -70L10 -70L10 70L-20 70Z' },
      { line: 'outline', d: 'M10 -15L70 -15L70 15L10 15Z' },
      {
        line: 'solid',
        d: 'M3 -45C3 -40.58 -0.58 -37 -5 -37C-9.42 -37 -13 -40.58 -13 -45C-13 -49.42 -9.42 -53 -5 -53C-0.58 -53 3 -49.42 3 -45ZM3 45C3 49.42 -0.58 53 -5 53C-9.42 53 -13 49.42 -13 45C-13 40.58 -9.42 37 -5 37C-0.58 37 3 40.58 3 45Z',
      },
    ],
  },
  {
    id: 'spreader',
    lengthMm: 3600,
    widthMm: 200,
    box: [-1800, -100, 1800, 100],
    words: 'spreader wall timber pole',
    paths: [
      { line: 'outline', d: 'M-1700 -50L1700 -50L1700 50L-1700 50Z' },
      { line: 'outline', d: 'M-1800 -100L-1700 -100L-1700 100L-1800 100Z' },
      { line: 'outline', d: 'M1700 -100L1800 -100L1800 100L1700 100Z' },
      { line: 'detail', d: 'M-1700 -50L-1300 50M1700 -50L1300 50M-600 -50L-200 50M600 -50L200 50' },
    ],
  },
  {
    id: 'point',
    lengthMm: 300,
    widthMm: 300,
    box: [-150, -150, 150, 150],
    words: 'point hanging rigging hoist motor roof',
    paths: [
      {
        line: 'outline',
        d: 'M105 0C105 57.99 57.99 105 0 105C-57.99 105 -105 57.99 -105 0C-105 -57.99 -57.99 -105 0 -105C57.99 -105 105 -57.99 105 0Z',
      },
      {
        line: 'detail',
        d: 'M-150 0L-105 0M105 0L150 0M0 -150L0 -105M0 105L0 150M-74 -74L74 74M-74 74L74 -74',
      },
    ],
  },
  {
    id: 'pipe',
    lengthMm: 3000,
    widthMm: 120,
    box: [-1500, -60, 1500, 60],
    words: 'pipe tube batten bar scaffold',
    paths: [
      { line: 'outline', d: 'M-1500 -40L1500 -40L1500 40L-1500 40Z' },
      { line: 'detail', d: 'M-1480 -60L-1480 60M1480 -60L1480 60M-1500 0L1500 0' },
    ],
  },
  {
    id: 'truss',
    lengthMm: 3000,
    widthMm: 290,
    box: [-1500, -145, 1500, 145],
    words: 'truss box triangle ladder',
    paths: [
      { line: 'outline', d: 'M-1500 -145L1500 -145L1500 145L-1500 145Z' },
      {
        line: 'detail',
        d: 'M-1500 -145L-1200 145L-900 -145L-600 145L-300 -145L0 145L300 -145L600 145L900 -145L1200 145L1500 -145',
      },
    ],
  },
  {
    id: 'tower',
    lengthMm: 1900,
    widthMm: 1900,
    box: [-950, -950, 950, 950],
    words: 'tower lift winch ground support fork outrigger',
    paths: [
      { line: 'detail', d: 'M-950 -950L-200 -200M950 -950L200 -200M-950 950L-200 200M950 950L200 200' },
      { line: 'outline', d: 'M-220 -220L220 -220L220 220L-220 220Z' },
      { line: 'detail', d: 'M-220 -220L220 220M-220 220L220 -220' },
      { line: 'outline', d: 'M220 -160L800 -160L800 -90L220 -90Z' },
      { line: 'outline', d: 'M220 90L800 90L800 160L220 160Z' },
    ],
  },
  {
    id: 'bond',
    lengthMm: 700,
    widthMm: 120,
    box: [-350, -60, 350, 60],
    words: 'bond safety line guy rope strap',
    paths: [
      { line: 'detail', d: 'M-240 0C-160 -80 -80 -80 0 0C80 80 160 80 240 0' },
      {
        line: 'outline',
        d: 'M-240 0C-240 30.38 -264.62 55 -295 55C-325.38 55 -350 30.38 -350 0C-350 -30.38 -325.38 -55 -295 -55C-264.62 -55 -240 -30.38 -240 0Z',
      },
      {
        line: 'outline',
        d: 'M350 0C350 30.38 325.38 55 295 55C264.62 55 240 30.38 240 0C240 -30.38 264.62 -55 295 -55C325.38 -55 350 -30.38 350 0Z',
      },
      {
        line: 'solid',
        d: 'M-273 0C-273 12.15 -282.85 22 -295 22C-307.15 22 -317 12.15 -317 0C-317 -12.15 -307.15 -22 -295 -22C-282.85 -22 -273 -12.15 -273 0ZM317 0C317 12.15 307.15 22 295 22C282.85 22 273 12.15 273 0C273 -12.15 282.85 -22 295 -22C307.15 -22 317 -12.15 317 0Z',
      },
    ],
  },
  {
    id: 'lift',
    lengthMm: 2400,
    widthMm: 1200,
    box: [-1200, -600, 1200, 600],
    words: 'lift scissor mast platform',
    paths: [
      { line: 'outline', d: 'M-1098 -600L-758 -600L-758 -430L-1098 -430Z' },
      { line: 'outline', d: 'M-1098 430L-758 430L-758 600L-1098 600Z' },
      { line: 'outline', d: 'M758 -600L1098 -600L1098 -430L758 -430Z' },
      { line: 'outline', d: 'M758 430L1098 430L1098 600L758 600Z' },
      { line: 'outline', d: 'M-1200 -480L1200 -480L1200 480L-1200 480Z' },
      {
        line: 'detail',
        d: 'M-1050 -330L1050 -330L1050 330L-1050 330ZM-1050 -330L0 330L1050 -330M-1050 330L0 -330L1050 330',
      },
    ],
  },
  {
    id: 'lift-boom',
    lengthMm: 5702,
    widthMm: 2200,
    box: [-1502, -1100, 4200, 1100],
    words: 'lift boom platform aerial telehandler',
    paths: [
      { line: 'outline', d: 'M-1502 -1100L-842 -1100L-842 -770L-1502 -770Z' },
      { line: 'outline', d: 'M-1502 770L-842 770L-842 1100L-1502 1100Z' },
      { line: 'outline', d: 'M842 -1100L1502 -1100L1502 -770L842 -770Z' },
      { line: 'outline', d: 'M842 770L1502 770L1502 1100L842 1100Z' },
      { line: 'outline', d: 'M-1500 -800L1500 -800L1500 800L-1500 800Z' },
      {
        line: 'outline',
        d: 'M320 0C320 342.42 42.42 620 -300 620C-642.42 620 -920 342.42 -920 0C-920 -342.42 -642.42 -620 -300 -620C42.42 -620 320 -342.42 320 0Z',
      },
      { line: 'outline', d: 'M-900 -150L3300 -150L3300 150L-900 150Z' },
      { line: 'outline', d: 'M3300 -600L4200 -600L4200 600L3300 600Z' },
      { line: 'detail', d: 'M3300 -600L4200 600M3300 600L4200 -600' },
    ],
  },
  {
    id: 'crane',
    lengthMm: 8960,
    widthMm: 2500,
    box: [-3600, -1250, 5360, 1250],
    words: 'crane mobile jib hook',
    paths: [
      { line: 'outline', d: 'M-3248 -1250L-2408 -1250L-2408 -830L-3248 -830Z' },
      { line: 'outline', d: 'M-3248 830L-2408 830L-2408 1250L-3248 1250Z' },
      { line: 'outline', d: 'M2408 -1250L3248 -1250L3248 -830L2408 -830Z' },
      { line: 'outline', d: 'M2408 830L3248 830L3248 1250L2408 1250Z' },
      { line: 'outline', d: 'M-3600 -900L3200 -900L3200 900L-3600 900Z' },
      {
        line: 'outline',
        d: 'M-50 0C-50 469.44 -430.56 850 -900 850C-1369.44 850 -1750 469.44 -1750 0C-1750 -469.44 -1369.44 -850 -900 -850C-430.56 -850 -50 -469.44 -50 0Z',
      },
      { line: 'outline', d: 'M-900 -260L5000 -90L5000 90L-900 260Z' },
      { line: 'detail', d: 'M-900 -260L600 210L1800 -180L3000 150L4200 -110L5000 0' },
      { line: 'outline', d: 'M-2300 -600L-1500 -600L-1500 600L-2300 600Z' },
      {
        line: 'outline',
        d: 'M5360 0C5360 99.41 5279.41 180 5180 180C5080.59 180 5000 99.41 5000 0C5000 -99.41 5080.59 -180 5180 -180C5279.41 -180 5360 -99.41 5360 0Z',
      },
      {
        line: 'solid',
        d: 'M5250 0C5250 38.66 5218.66 70 5180 70C5141.34 70 5110 38.66 5110 0C5110 -38.66 5141.34 -70 5180 -70C5218.66 -70 5250 -38.66 5250 0Z',
      },
    ],
  },
  {
    id: 'tungsten-fresnel-small',
    lengthMm: 200,
    widthMm: 130,
    box: [-100, -65, 100, 65],
    words: 'tungsten fresnel small lens',
    paths: [
      {
        line: 'outline',
        d: 'M70 -65L-60 -65C-86.67 -65 -100 -43.33 -100 0C-100 43.33 -86.67 65 -60 65L70 65C110 21.67 110 -21.67 70 -65Z',
      },
      { line: 'detail', d: 'M-45 -30L25 0L-45 30' },
    ],
  },
  {
    id: 'tungsten-fresnel-large',
    lengthMm: 550,
    widthMm: 540,
    box: [-260, -270, 290, 270],
    words: 'tungsten fresnel large lens barn doors yoke',
    paths: [
      {
        line: 'outline',
        d: 'M170 -200L-150 -200C-223.33 -200 -260 -153.33 -260 -60L-260 60C-260 153.33 -223.33 200 -150 200L170 200C210 66.67 210 -66.67 170 -200Z',
      },
      { line: 'outline', d: 'M170 -200L290 -270M170 200L290 270' },
      { line: 'outline', d: 'M-60 -200L-60 -250L40 -250L40 -200M-60 200L-60 250L40 250L40 200' },
      {
        line: 'detail',
        d: 'M120 -200C160 -66.67 160 66.67 120 200M-130 -130L-10 -86.7L-130 -43.3L-10 0L-130 43.3L-10 86.7L-130 130',
      },
    ],
  },
  {
    id: 'theatre-fresnel',
    lengthMm: 250,
    widthMm: 280,
    box: [-130, -140, 120, 140],
    words: 'tungsten theatre fresnel clamp hook',
    paths: [
      {
        line: 'outline',
        d: 'M90 -110L-60 -110L-130 -60L-130 60L-60 110L90 110L90 140L120 140L120 -140L90 -140Z',
      },
      {
        line: 'detail',
        d: 'M90 -110C113.33 -36.67 113.33 36.67 90 110M-58 -65L18 -32.5L-58 0L18 32.5L-58 65',
      },
    ],
  },
  {
    id: 'tungsten-broad',
    lengthMm: 200,
    widthMm: 380,
    box: [-100, -190, 100, 190],
    words: 'tungsten broad open face flood box',
    paths: [
      { line: 'outline', d: 'M-100 -140L50 -140L50 140L-100 140Z' },
      { line: 'outline', d: 'M50 -140L100 -190M50 140L100 190' },
      { line: 'detail', d: 'M-25 -120L-25 120M-53 -100L3 -66.7L-53 -33.3L3 0L-53 33.3L3 66.7L-53 100' },
    ],
  },
  {
    id: 'scoop',
    lengthMm: 260,
    widthMm: 400,
    box: [-60, -200, 200, 200],
    words: 'tungsten scoop flood bowl',
    paths: [
      { line: 'outline', d: 'M200 -200C89.54 -200 0 -110.46 0 0C0 110.46 89.54 200 200 200Z' },
      { line: 'outline', d: 'M0 -45L-60 -45L-60 45L0 45' },
      { line: 'detail', d: 'M65 -80L145 -40L65 0L145 40L65 80' },
    ],
  },
  {
    id: 'cyc-flood-3',
    lengthMm: 300,
    widthMm: 900,
    box: [-150, -450, 150, 450],
    words: 'cyc cyclorama flood three cells tungsten',
    paths: [
      {
        line: 'outline',
        d: 'M150 -450L70 -450L-150 -400L-150 400L70 450L150 450L90 300L150 150L90 0L150 -150L90 -300Z',
      },
      {
        line: 'detail',
        d: 'M-150 -140L120 -140M-150 140L120 140M-75 -370L15 -316.7L-75 -263.3L15 -210M-75 -80L15 -26.7L-75 26.7L15 80M-75 210L15 263.3L-75 316.7L15 370',
      },
    ],
  },
  {
    id: 'cyc-flood-4',
    lengthMm: 500,
    widthMm: 600,
    box: [-250, -300, 250, 300],
    words: 'cyc cyclorama flood four cells square tungsten',
    paths: [
      {
        line: 'outline',
        d: 'M250 -300L-200 -300L-250 -250L-250 250L-200 300L250 300L180 150L250 0L180 -150Z',
      },
      {
        line: 'detail',
        d: 'M-250 0L230 0M-20 -300L-20 300M-175 -220L-85 -173.3L-175 -126.7L-85 -80M-175 80L-85 126.7L-175 173.3L-85 220M40 -220L130 -173.3L40 -126.7L130 -80M40 80L130 126.7L40 173.3L130 220',
      },
    ],
  },
  {
    id: 'softlight-large',
    lengthMm: 660,
    widthMm: 860,
    box: [-330, -430, 330, 430],
    words: 'tungsten soft softlight large several lamps indirect',
    paths: [
      {
        line: 'outline',
        d: 'M330 -430L0 -430C-220 -343.33 -330 -200 -330 0C-330 200 -220 343.33 0 430L330 430Z',
      },
      {
        line: 'detail',
        d: 'M230 -430L230 430M230 -215L330 -215M230 0L330 0M230 215L330 215M-150 -270L-30 -210L-150 -150L-30 -90L-150 -30M-150 30L-30 90L-150 150L-30 210L-150 270',
      },
    ],
  },
  {
    id: 'par-bank-2',
    lengthMm: 190,
    widthMm: 400,
    box: [-100, -200, 90, 200],
    words: 'tungsten par bank two lamps',
    paths: [
      { line: 'outline', d: 'M90 -200L-100 -200L-100 200L90 200Z' },
      {
        line: 'outline',
        d: 'M70 -100C70 -58.58 36.42 -25 -5 -25C-46.42 -25 -80 -58.58 -80 -100C-80 -141.42 -46.42 -175 -5 -175C36.42 -175 70 -141.42 70 -100Z',
      },
      {
        line: 'outline',
        d: 'M70 100C70 141.42 36.42 175 -5 175C-46.42 175 -80 141.42 -80 100C-80 58.58 -46.42 25 -5 25C36.42 25 70 58.58 70 100Z',
      },
      { line: 'detail', d: 'M-5 -140L20 -100L-5 -60M-5 60L20 100L-5 140' },
    ],
  },
  {
    id: 'par-bank-4',
    lengthMm: 400,
    widthMm: 440,
    box: [-180, -220, 220, 220],
    words: 'tungsten par bank four lamps',
    paths: [
      { line: 'outline', d: 'M-180 -180L180 -180L180 180L-180 180Z' },
      {
        line: 'outline',
        d: 'M-18 -90C-18 -50.24 -50.24 -18 -90 -18C-129.76 -18 -162 -50.24 -162 -90C-162 -129.76 -129.76 -162 -90 -162C-50.24 -162 -18 -129.76 -18 -90Z',
      },
      {
        line: 'outline',
        d: 'M-18 90C-18 129.76 -50.24 162 -90 162C-129.76 162 -162 129.76 -162 90C-162 50.24 -129.76 18 -90 18C-50.24 18 -18 50.24 -18 90Z',
      },
      {
        line: 'outline',
        d: 'M162 -90C162 -50.24 129.76 -18 90 -18C50.24 -18 18 -50.24 18 -90C18 -129.76 50.24 -162 90 -162C129.76 -162 162 -129.76 162 -90Z',
      },
      {
        line: 'outline',
        d: 'M162 90C162 129.76 129.76 162 90 162C50.24 162 18 129.76 18 90C18 50.24 50.24 18 90 18C129.76 18 162 50.24 162 90Z',
      },
      { line: 'outline', d: 'M180 -180L220 -220M180 180L220 220' },
    ],
  },
  {
    id: 'par-bank-6',
    lengthMm: 480,
    widthMm: 960,
    box: [-240, -480, 240, 480],
    words: 'tungsten par bank six lamps deep',
    paths: [
      { line: 'outline', d: 'M200 -480L-240 -430L-240 430L200 480Z' },
      {
        line: 'outline',
        d: 'M-23 -280C-23 -229.19 -64.19 -188 -115 -188C-165.81 -188 -207 -229.19 -207 -280C-207 -330.81 -165.81 -372 -115 -372C-64.19 -372 -23 -330.81 -23 -280Z',
      },
      {
        line: 'outline',
        d: 'M-23 0C-23 50.81 -64.19 92 -115 92C-165.81 92 -207 50.81 -207 0C-207 -50.81 -165.81 -92 -115 -92C-64.19 -92 -23 -50.81 -23 0Z',
      },
      {
        line: 'outline',
        d: 'M-23 280C-23 330.81 -64.19 372 -115 372C-165.81 372 -207 330.81 -207 280C-207 229.19 -165.81 188 -115 188C-64.19 188 -23 229.19 -23 280Z',
      },
      {
        line: 'outline',
        d: 'M187 -280C187 -229.19 145.81 -188 95 -188C44.19 -188 3 -229.19 3 -280C3 -330.81 44.19 -372 95 -372C145.81 -372 187 -330.81 187 -280Z',
      },
      {
        line: 'outline',
        d: 'M187 0C187 50.81 145.81 92 95 92C44.19 92 3 50.81 3 0C3 -50.81 44.19 -92 95 -92C145.81 -92 187 -50.81 187 0Z',
      },
      {
        line: 'outline',
        d: 'M187 280C187 330.81 145.81 372 95 372C44.19 372 3 330.81 3 280C3 229.19 44.19 188 95 188C145.81 188 187 229.19 187 280Z',
      },
      { line: 'outline', d: 'M200 -480L240 -480M200 480L240 480' },
    ],
  },
  {
    id: 'par-bank-9',
    lengthMm: 500,
    widthMm: 740,
    box: [-250, -370, 250, 370],
    words: 'tungsten par bank nine lamps',
    paths: [
      { line: 'outline', d: 'M-250 -310L170 -310L170 310L-250 310Z' },
      {
        line: 'outline',
        d: 'M-112 -205C-112 -172.97 -137.97 -147 -170 -147C-202.03 -147 -228 -172.97 -228 -205C-228 -237.03 -202.03 -263 -170 -263C-137.97 -263 -112 -237.03 -112 -205Z',
      },
      {
        line: 'outline',
        d: 'M-112 0C-112 32.03 -137.97 58 -170 58C-202.03 58 -228 32.03 -228 0C-228 -32.03 -202.03 -58 -170 -58C-137.97 -58 -112 -32.03 -112 0Z',
      },
      {
        line: 'outline',
        d: 'M-112 205C-112 237.03 -137.97 263 -170 263C-202.03 263 -228 237.03 -228 205C-228 172.97 -202.03 147 -170 147C-137.97 147 -112 172.97 -112 205Z',
      },
      {
        line: 'outline',
        d: 'M18 -205C18 -172.97 -7.97 -147 -40 -147C-72.03 -147 -98 -172.97 -98 -205C-98 -237.03 -72.03 -263 -40 -263C-7.97 -263 18 -237.03 18 -205Z',
      },
      {
        line: 'outline',
        d: 'M18 0C18 32.03 -7.97 58 -40 58C-72.03 58 -98 32.03 -98 0C-98 -32.03 -72.03 -58 -40 -58C-7.97 -58 18 -32.03 18 0Z',
      },
      {
        line: 'outline',
        d: 'M18 205C18 237.03 -7.97 263 -40 263C-72.03 263 -98 237.03 -98 205C-98 172.97 -72.03 147 -40 147C-7.97 147 18 172.97 18 205Z',
      },
      {
        line: 'outline',
        d: 'M148 -205C148 -172.97 122.03 -147 90 -147C57.97 -147 32 -172.97 32 -205C32 -237.03 57.97 -263 90 -263C122.03 -263 148 -237.03 148 -205Z',
      },
      {
        line: 'outline',
        d: 'M148 0C148 32.03 122.03 58 90 58C57.97 58 32 32.03 32 0C32 -32.03 57.97 -58 90 -58C122.03 -58 148 -32.03 148 0Z',
      },
      {
        line: 'outline',
        d: 'M148 205C148 237.03 122.03 263 90 263C57.97 263 32 237.03 32 205C32 172.97 57.97 147 90 147C122.03 147 148 172.97 148 205Z',
      },
      { line: 'outline', d: 'M170 -310L250 -370M170 310L250 370' },
    ],
  },
  {
    id: 'par-bank-12',
    lengthMm: 460,
    widthMm: 820,
    box: [-250, -410, 210, 410],
    words: 'tungsten par bank twelve lamps',
    paths: [
      { line: 'outline', d: 'M-250 -410L150 -410L150 410L-250 410Z' },
      {
        line: 'outline',
        d: 'M-128 -310C-128 -281.28 -151.28 -258 -180 -258C-208.72 -258 -232 -281.28 -232 -310C-232 -338.72 -208.72 -362 -180 -362C-151.28 -362 -128 -338.72 -128 -310Z',
      },
      {
        line: 'outline',
        d: 'M-128 -105C-128 -76.28 -151.28 -53 -180 -53C-208.72 -53 -232 -76.28 -232 -105C-232 -133.72 -208.72 -157 -180 -157C-151.28 -157 -128 -133.72 -128 -105Z',
      },
      {
        line: 'outline',
        d: 'M-128 100C-128 128.72 -151.28 152 -180 152C-208.72 152 -232 128.72 -232 100C-232 71.28 -208.72 48 -180 48C-151.28 48 -128 71.28 -128 100Z',
      },
      {
        line: 'outline',
        d: 'M-128 305C-128 333.72 -151.28 357 -180 357C-208.72 357 -232 333.72 -232 305C-232 276.28 -208.72 253 -180 253C-151.28 253 -128 276.28 -128 305Z',
      },
      {
        line: 'outline',
        d: 'M2 -310C2 -281.28 -21.28 -258 -50 -258C-78.72 -258 -102 -281.28 -102 -310C-102 -338.72 -78.72 -362 -50 -362C-21.28 -362 2 -338.72 2 -310Z',
      },
      {
        line: 'outline',
        d: 'M2 -105C2 -76.28 -21.28 -53 -50 -53C-78.72 -53 -102 -76.28 -102 -105C-102 -133.72 -78.72 -157 -50 -157C-21.28 -157 2 -133.72 2 -105Z',
      },
      {
        line: 'outline',
        d: 'M2 100C2 128.72 -21.28 152 -50 152C-78.72 152 -102 128.72 -102 100C-102 71.28 -78.72 48 -50 48C-21.28 48 2 71.28 2 100Z',
      },
      {
        line: 'outline',
        d: 'M2 305C2 333.72 -21.28 357 -50 357C-78.72 357 -102 333.72 -102 305C-102 276.28 -78.72 253 -50 253C-21.28 253 2 276.28 2 305Z',
      },
      {
        line: 'outline',
        d: 'M132 -310C132 -281.28 108.72 -258 80 -258C51.28 -258 28 -281.28 28 -310C28 -338.72 51.28 -362 80 -362C108.72 -362 132 -338.72 132 -310Z',
      },
      {
        line: 'outline',
        d: 'M132 -105C132 -76.28 108.72 -53 80 -53C51.28 -53 28 -76.28 28 -105C28 -133.72 51.28 -157 80 -157C108.72 -157 132 -133.72 132 -105Z',
      },
      {
        line: 'outline',
        d: 'M132 100C132 128.72 108.72 152 80 152C51.28 152 28 128.72 28 100C28 71.28 51.28 48 80 48C108.72 48 132 71.28 132 100Z',
      },
      {
        line: 'outline',
        d: 'M132 305C132 333.72 108.72 357 80 357C51.28 357 28 333.72 28 305C28 276.28 51.28 253 80 253C108.72 253 132 276.28 132 305Z',
      },
      { line: 'outline', d: 'M150 -410L210 -410L210 -360M150 410L210 410L210 360' },
    ],
  },
  {
    id: 'par-bank-12-deep',
    lengthMm: 540,
    widthMm: 1240,
    box: [-300, -620, 240, 620],
    words: 'tungsten par bank twelve lamps deep wall',
    paths: [
      { line: 'outline', d: 'M240 -620L-300 -560L-300 560L240 620Z' },
      { line: 'detail', d: 'M-300 0L240 0M-300 -290L240 -310M-300 290L240 310' },
      {
        line: 'solid',
        d: 'M-144 -450C-144 -424.59 -164.59 -404 -190 -404C-215.41 -404 -236 -424.59 -236 -450C-236 -475.41 -215.41 -496 -190 -496C-164.59 -496 -144 -475.41 -144 -450ZM26 -450C26 -424.59 5.41 -404 -20 -404C-45.41 -404 -66 -424.59 -66 -450C-66 -475.41 -45.41 -496 -20 -496C5.41 -496 26 -475.41 26 -450ZM196 -450C196 -424.59 175.41 -404 150 -404C124.59 -404 104 -424.59 104 -450C104 -475.41 124.59 -496 150 -496C175.41 -496 196 -475.41 196 -450ZM-144 -150C-144 -124.59 -164.59 -104 -190 -104C-215.41 -104 -236 -124.59 -236 -150C-236 -175.41 -215.41 -196 -190 -196C-164.59 -196 -144 -175.41 -144 -150ZM26 -150C26 -124.59 5.41 -104 -20 -104C-45.41 -104 -66 -124.59 -66 -150C-66 -175.41 -45.41 -196 -20 -196C5.41 -196 26 -175.41 26 -150ZM196 -150C196 -124.59 175.41 -104 150 -104C124.59 -104 104 -124.59 104 -150C104 -175.41 124.59 -196 150 -196C175.41 -196 196 -175.41 196 -150ZM-144 150C-144 175.41 -164.59 196 -190 196C-215.41 196 -236 175.41 -236 150C-236 124.59 -215.41 104 -190 104C-164.59 104 -144 124.59 -144 150ZM26 150C26 175.41 5.41 196 -20 196C-45.41 196 -66 175.41 -66 150C-66 124.59 -45.41 104 -20 104C5.41 104 26 124.59 26 150ZM196 150C196 175.41 175.41 196 150 196C124.59 196 104 175.41 104 150C104 124.59 124.59 104 150 104C175.41 104 196 124.59 196 150ZM-144 450C-144 475.41 -164.59 496 -190 496C-215.41 496 -236 475.41 -236 450C-236 424.59 -215.41 404 -190 404C-164.59 404 -144 424.59 -144 450ZM26 450C26 475.41 5.41 496 -20 496C-45.41 496 -66 475.41 -66 450C-66 424.59 -45.41 404 -20 404C5.41 404 26 424.59 26 450ZM196 450C196 475.41 175.41 496 150 496C124.59 496 104 475.41 104 450C104 424.59 124.59 404 150 404C175.41 404 196 424.59 196 450Z',
      },
    ],
  },
  {
    id: 'ellipsoidal-zoom',
    lengthMm: 660,
    widthMm: 240,
    box: [-330, -120, 330, 120],
    words: 'ellipsoidal profile zoom two lenses tungsten',
    paths: [
      {
        line: 'outline',
        d: 'M-300 -85L-90 -85L-70 -65L330 -75L330 75L-70 65L-90 85L-300 85L-330 50L-330 -50Z',
      },
      { line: 'outline', d: 'M-90 -120L-50 -120L-50 120L-90 120Z' },
      {
        line: 'detail',
        d: 'M110 -70C136.67 -23.33 136.67 23.33 110 70M250 -73C223.33 -24.33 223.33 24.33 250 73M-250 -50L-170 -25L-250 0L-170 25L-250 50',
      },
    ],
  },
  {
    id: 'ellipsoidal-narrow',
    lengthMm: 840,
    widthMm: 460,
    box: [-420, -230, 420, 230],
    words: 'ellipsoidal profile narrow large lens tungsten',
    paths: [
      {
        line: 'outline',
        d: 'M-420 -80L-150 -80L-90 -110L330 -230L420 -230L420 230L330 230L-90 110L-150 80L-420 80Z',
      },
      {
        line: 'detail',
        d: 'M330 -230C383.33 -76.67 383.33 76.67 330 230M-335 -50L-245 -25L-335 0L-245 25L-335 50',
      },
    ],
  },
  {
    id: 'led-ellipsoidal',
    lengthMm: 670,
    widthMm: 300,
    box: [-340, -150, 330, 150],
    words: 'led ellipsoidal profile engine',
    paths: [
      {
        line: 'outline',
        d: 'M-324 -150L-96 -150C-87.16 -150 -80 -142.84 -80 -134L-80 134C-80 142.84 -87.16 150 -96 150L-324 150C-332.84 150 -340 142.84 -340 134L-340 -134C-340 -142.84 -332.84 -150 -324 -150Z',
      },
      { line: 'outline', d: 'M-80 -80L60 -80L60 -100L330 -110L330 110L60 100L60 80L-80 80Z' },
      { line: 'detail', d: 'M-300 -150L-300 150M-260 -150L-260 150M280 -108C300 -36 300 36 280 108' },
      {
        line: 'solid',
        d: 'M-144 -70C-144 -55.64 -155.64 -44 -170 -44C-184.36 -44 -196 -55.64 -196 -70C-196 -84.36 -184.36 -96 -170 -96C-155.64 -96 -144 -84.36 -144 -70ZM-144 0C-144 14.36 -155.64 26 -170 26C-184.36 26 -196 14.36 -196 0C-196 -14.36 -184.36 -26 -170 -26C-155.64 -26 -144 -14.36 -144 0ZM-144 70C-144 84.36 -155.64 96 -170 96C-184.36 96 -196 84.36 -196 70C-196 55.64 -184.36 44 -170 44C-155.64 44 -144 55.64 -144 70Z',
      },
    ],
  },
  {
    id: 'overhead-box',
    lengthMm: 900,
    widthMm: 900,
    box: [-450, -450, 450, 450],
    words: 'overhead soft box tungsten six lamps square',
    paths: [
      { line: 'outline', d: 'M-450 -450L450 -450L450 450L-450 450Z' },
      {
        line: 'detail',
        d: 'M-450 -450L-250 -250M450 -450L250 -250M-450 450L-250 250M450 450L250 250M-250 -250L250 -250L250 250L-250 250ZM-160 -170L-40 -113.3L-160 -56.7L-40 0L-160 56.7L-40 113.3L-160 170M50 -170L170 -113.3L50 -56.7L170 0L50 56.7L170 113.3L50 170',
      },
    ],
  },
  {
    id: 'led-space-light',
    lengthMm: 750,
    widthMm: 750,
    box: [-375, -375, 375, 375],
    words: 'led space light overhead silk',
    paths: [
      {
        line: 'outline',
        d: 'M375 0C375 207.11 207.11 375 0 375C-207.11 375 -375 207.11 -375 0C-375 -207.11 -207.11 -375 0 -375C207.11 -375 375 -207.11 375 0Z',
      },
      {
        line: 'detail',
        d: 'M230 0C230 127.03 127.03 230 0 230C-127.03 230 -230 127.03 -230 0C-230 -127.03 -127.03 -230 0 -230C127.03 -230 230 -127.03 230 0Z',
      },
      {
        line: 'solid',
        d: 'M169 0C169 18.78 153.78 34 135 34C116.22 34 101 18.78 101 0C101 -18.78 116.22 -34 135 -34C153.78 -34 169 -18.78 169 0ZM101.5 116.9C101.5 135.68 86.28 150.9 67.5 150.9C48.72 150.9 33.5 135.68 33.5 116.9C33.5 98.12 48.72 82.9 67.5 82.9C86.28 82.9 101.5 98.12 101.5 116.9ZM-33.5 116.9C-33.5 135.68 -48.72 150.9 -67.5 150.9C-86.28 150.9 -101.5 135.68 -101.5 116.9C-101.5 98.12 -86.28 82.9 -67.5 82.9C-48.72 82.9 -33.5 98.12 -33.5 116.9ZM-101 0C-101 18.78 -116.22 34 -135 34C-153.78 34 -169 18.78 -169 0C-169 -18.78 -153.78 -34 -135 -34C-116.22 -34 -101 -18.78 -101 0ZM-33.5 -116.9C-33.5 -98.12 -48.72 -82.9 -67.5 -82.9C-86.28 -82.9 -101.5 -98.12 -101.5 -116.9C-101.5 -135.68 -86.28 -150.9 -67.5 -150.9C-48.72 -150.9 -33.5 -135.68 -33.5 -116.9ZM101.5 -116.9C101.5 -98.12 86.28 -82.9 67.5 -82.9C48.72 -82.9 33.5 -98.12 33.5 -116.9C33.5 -135.68 48.72 -150.9 67.5 -150.9C86.28 -150.9 101.5 -135.68 101.5 -116.9ZM34 0C34 18.78 18.78 34 0 34C-18.78 34 -34 18.78 -34 0C-34 -18.78 -18.78 -34 0 -34C18.78 -34 34 -18.78 34 0Z',
      },
    ],
  },
  {
    id: 'discharge-fresnel-small',
    lengthMm: 225,
    widthMm: 170,
    box: [-120, -85, 105, 85],
    words: 'discharge daylight small fresnel spot lens',
    paths: [
      { line: 'outline', d: 'M75 -85L-60 -85L-120 -40L-120 40L-60 85L75 85C115 28.33 115 -28.33 75 -85Z' },
      { line: 'detail', d: 'M-53 -38L23 38M-53 38L23 -38' },
    ],
  },
  {
    id: 'discharge-fresnel-large',
    lengthMm: 680,
    widthMm: 740,
    box: [-330, -370, 350, 370],
    words: 'discharge daylight large fresnel lens yoke barn doors',
    paths: [
      {
        line: 'outline',
        d: 'M210 -280L-230 -280L-330 -190L-330 190L-230 280L210 280C263.33 93.33 263.33 -93.33 210 -280Z',
      },
      { line: 'outline', d: 'M210 -280L350 -370M210 280L350 370' },
      { line: 'outline', d: 'M-110 -280L-110 -340L30 -340L30 -280M-110 280L-110 340L30 340L30 280' },
      {
        line: 'detail',
        d: 'M150 -280C203.33 -93.33 203.33 93.33 150 280M-220 -120L20 120M-220 120L20 -120M70 0C70 93.89 -6.11 170 -100 170C-193.89 170 -270 93.89 -270 0C-270 -93.89 -193.89 -170 -100 -170C-6.11 -170 70 -93.89 70 0Z',
      },
    ],
  },
  {
    id: 'discharge-par-small',
    lengthMm: 240,
    widthMm: 190,
    box: [-120, -95, 120, 95],
    words: 'discharge daylight small par lens',
    paths: [
      { line: 'outline', d: 'M-120 -40L-30 -40L40 -95L120 -95L120 95L40 95L-30 40L-120 40Z' },
      { line: 'detail', d: 'M55 -34L105 34M55 34L105 -34' },
    ],
  },
  {
    id: 'discharge-reflector',
    lengthMm: 460,
    widthMm: 500,
    box: [-230, -250, 230, 250],
    words: 'discharge daylight open reflector faceted',
    paths: [
      { line: 'outline', d: 'M230 -250L46 -171L-161 -171L-230 -92L-230 92L-161 171L46 171L230 250Z' },
      { line: 'outline', d: 'M-127 -171L-127 -230L-23 -230L-23 -171M-127 171L-127 230L-23 230L-23 171' },
      { line: 'detail', d: 'M138 -211L138 211M-127 -92L35 92M-127 92L35 -92' },
    ],
  },
  {
    id: 'led-fresnel-small',
    lengthMm: 215,
    widthMm: 170,
    box: [-115, -85, 100, 85],
    words: 'led small fresnel lens',
    paths: [
      {
        line: 'outline',
        d: 'M-101 -85L36 -85C43.73 -85 50 -78.73 50 -71L50 71C50 78.73 43.73 85 36 85L-101 85C-108.73 85 -115 78.73 -115 71L-115 -71C-115 -78.73 -108.73 -85 -101 -85Z',
      },
      { line: 'outline', d: 'M50 -85L75 -85C108.33 -28.33 108.33 28.33 75 85L50 85' },
      { line: 'detail', d: 'M-115 -35L-75 -35M-115 0L-75 0M-115 35L-75 35' },
      {
        line: 'solid',
        d: 'M26 0C26 14.36 14.36 26 0 26C-14.36 26 -26 14.36 -26 0C-26 -14.36 -14.36 -26 0 -26C14.36 -26 26 -14.36 26 0Z',
      },
    ],
  },
  {
    id: 'led-spot-small',
    lengthMm: 210,
    widthMm: 120,
    box: [-100, -60, 110, 60],
    words: 'led small spot point source battery plate',
    paths: [
      {
        line: 'outline',
        d: 'M-70 -55L20 -55C36.57 -55 50 -41.57 50 -25L50 25C50 41.57 36.57 55 20 55L-70 55C-86.57 55 -100 41.57 -100 25L-100 -25C-100 -41.57 -86.57 -55 -70 -55Z',
      },
      { line: 'outline', d: 'M50 -40L110 -60L110 60L50 40' },
      {
        line: 'solid',
        d: 'M2 0C2 12.15 -7.85 22 -20 22C-32.15 22 -42 12.15 -42 0C-42 -12.15 -32.15 -22 -20 -22C-7.85 -22 2 -12.15 2 0Z',
      },
    ],
  },
  {
    id: 'led-spot-large',
    lengthMm: 550,
    widthMm: 420,
    box: [-275, -210, 275, 210],
    words: 'led large spot point source yoke reflector',
    paths: [
      {
        line: 'outline',
        d: 'M-255 -165L35 -165C46.05 -165 55 -156.05 55 -145L55 145C55 156.05 46.05 165 35 165L-255 165C-266.05 165 -275 156.05 -275 145L-275 -145C-275 -156.05 -266.05 -165 -255 -165Z',
      },
      { line: 'outline', d: 'M55 -110L120 -110L275 -210L275 210L120 110L55 110' },
      { line: 'outline', d: 'M-160 -165L-160 -210L-50 -210L-50 -165M-160 165L-160 210L-50 210L-50 165' },
      { line: 'detail', d: 'M120 -110L120 110' },
      {
        line: 'solid',
        d: 'M-76 -70C-76 -51.22 -91.22 -36 -110 -36C-128.78 -36 -144 -51.22 -144 -70C-144 -88.78 -128.78 -104 -110 -104C-91.22 -104 -76 -88.78 -76 -70ZM-76 70C-76 88.78 -91.22 104 -110 104C-128.78 104 -144 88.78 -144 70C-144 51.22 -128.78 36 -110 36C-91.22 36 -76 51.22 -76 70ZM-146 0C-146 18.78 -161.22 34 -180 34C-198.78 34 -214 18.78 -214 0C-214 -18.78 -198.78 -34 -180 -34C-161.22 -34 -146 -18.78 -146 0ZM-6 0C-6 18.78 -21.22 34 -40 34C-58.78 34 -74 18.78 -74 0C-74 -18.78 -58.78 -34 -40 -34C-21.22 -34 -6 -18.78 -6 0Z',
      },
    ],
  },
  {
    id: 'led-on-camera',
    lengthMm: 110,
    widthMm: 160,
    box: [-70, -80, 40, 80],
    words: 'led on camera small light',
    paths: [
      {
        line: 'outline',
        d: 'M-34 -60L-6 -60C-2.69 -60 0 -57.31 0 -54L0 54C0 57.31 -2.69 60 -6 60L-34 60C-37.31 60 -40 57.31 -40 54L-40 -54C-40 -57.31 -37.31 -60 -34 -60Z',
      },
      { line: 'outline', d: 'M0 -60L40 -80M0 60L40 80' },
      { line: 'outline', d: 'M-40 -18L-70 -18L-70 18L-40 18' },
      {
        line: 'solid',
        d: 'M-9 -30C-9 -23.92 -13.92 -19 -20 -19C-26.08 -19 -31 -23.92 -31 -30C-31 -36.08 -26.08 -41 -20 -41C-13.92 -41 -9 -36.08 -9 -30ZM-9 30C-9 36.08 -13.92 41 -20 41C-26.08 41 -31 36.08 -31 30C-31 23.92 -26.08 19 -20 19C-13.92 19 -9 23.92 -9 30Z',
      },
    ],
  },
  {
    id: 'led-panel-square',
    lengthMm: 180,
    widthMm: 320,
    box: [-110, -160, 70, 160],
    words: 'led panel square 30 30',
    paths: [
      {
        line: 'outline',
        d: 'M-56 -160L56 -160C63.73 -160 70 -153.73 70 -146L70 146C70 153.73 63.73 160 56 160L-56 160C-63.73 160 -70 153.73 -70 146L-70 -146C-70 -153.73 -63.73 -160 -56 -160Z',
      },
      { line: 'outline', d: 'M-70 -60L-110 -60L-110 60L-70 60' },
      { line: 'detail', d: 'M30 -160L30 160' },
      {
        line: 'solid',
        d: 'M4 -90C4 -76.75 -6.75 -66 -20 -66C-33.25 -66 -44 -76.75 -44 -90C-44 -103.25 -33.25 -114 -20 -114C-6.75 -114 4 -103.25 4 -90ZM4 0C4 13.25 -6.75 24 -20 24C-33.25 24 -44 13.25 -44 0C-44 -13.25 -33.25 -24 -20 -24C-6.75 -24 4 -13.25 4 0ZM4 90C4 103.25 -6.75 114 -20 114C-33.25 114 -44 103.25 -44 90C-44 76.75 -33.25 66 -20 66C-6.75 66 4 76.75 4 90Z',
      },
    ],
  },
  {
    id: 'led-panel-2x2',
    lengthMm: 260,
    widthMm: 640,
    box: [-150, -320, 110, 320],
    words: 'led panel 60 60 two rows',
    paths: [
      {
        line: 'outline',
        d: 'M-130 -320L90 -320C101.05 -320 110 -311.05 110 -300L110 300C110 311.05 101.05 320 90 320L-130 320C-141.05 320 -150 311.05 -150 300L-150 -300C-150 -311.05 -141.05 -320 -130 -320Z',
      },
      { line: 'detail', d: 'M50 -320L50 320M-150 0L50 0M-50 -320L-50 320' },
      {
        line: 'solid',
        d: 'M-74 -240C-74 -225.64 -85.64 -214 -100 -214C-114.36 -214 -126 -225.64 -126 -240C-126 -254.36 -114.36 -266 -100 -266C-85.64 -266 -74 -254.36 -74 -240ZM26 -240C26 -225.64 14.36 -214 0 -214C-14.36 -214 -26 -225.64 -26 -240C-26 -254.36 -14.36 -266 0 -266C14.36 -266 26 -254.36 26 -240ZM-74 -80C-74 -65.64 -85.64 -54 -100 -54C-114.36 -54 -126 -65.64 -126 -80C-126 -94.36 -114.36 -106 -100 -106C-85.64 -106 -74 -94.36 -74 -80ZM26 -80C26 -65.64 14.36 -54 0 -54C-14.36 -54 -26 -65.64 -26 -80C-26 -94.36 -14.36 -106 0 -106C14.36 -106 26 -94.36 26 -80ZM-74 80C-74 94.36 -85.64 106 -100 106C-114.36 106 -126 94.36 -126 80C-126 65.64 -114.36 54 -100 54C-85.64 54 -74 65.64 -74 80ZM26 80C26 94.36 14.36 106 0 106C-14.36 106 -26 94.36 -26 80C-26 65.64 -14.36 54 0 54C14.36 54 26 65.64 26 80ZM-74 240C-74 254.36 -85.64 266 -100 266C-114.36 266 -126 254.36 -126 240C-126 225.64 -114.36 214 -100 214C-85.64 214 -74 225.64 -74 240ZM26 240C26 254.36 14.36 266 0 266C-14.36 266 -26 254.36 -26 240C-26 225.64 -14.36 214 0 214C14.36 214 26 225.64 26 240Z',
      },
    ],
  },
  {
    id: 'led-panel-large',
    lengthMm: 435,
    widthMm: 1290,
    box: [-260, -645, 175, 645],
    words: 'led panel large soft heavy',
    paths: [
      {
        line: 'outline',
        d: 'M-145 -645L145 -645C161.57 -645 175 -631.57 175 -615L175 615C175 631.57 161.57 645 145 645L-145 645C-161.57 645 -175 631.57 -175 615L-175 -615C-175 -631.57 -161.57 -645 -145 -645Z',
      },
      { line: 'detail', d: 'M115 -645L115 645M-175 -215L115 -215M-175 215L115 215' },
      {
        line: 'solid',
        d: 'M10 -550C10 -527.91 -7.91 -510 -30 -510C-52.09 -510 -70 -527.91 -70 -550C-70 -572.09 -52.09 -590 -30 -590C-7.91 -590 10 -572.09 10 -550ZM10 -430C10 -407.91 -7.91 -390 -30 -390C-52.09 -390 -70 -407.91 -70 -430C-70 -452.09 -52.09 -470 -30 -470C-7.91 -470 10 -452.09 10 -430ZM10 -310C10 -287.91 -7.91 -270 -30 -270C-52.09 -270 -70 -287.91 -70 -310C-70 -332.09 -52.09 -350 -30 -350C-7.91 -350 10 -332.09 10 -310ZM10 -120C10 -97.91 -7.91 -80 -30 -80C-52.09 -80 -70 -97.91 -70 -120C-70 -142.09 -52.09 -160 -30 -160C-7.91 -160 10 -142.09 10 -120ZM10 0C10 22.09 -7.91 40 -30 40C-52.09 40 -70 22.09 -70 0C-70 -22.09 -52.09 -40 -30 -40C-7.91 -40 10 -22.09 10 0ZM10 120C10 142.09 -7.91 160 -30 160C-52.09 160 -70 142.09 -70 120C-70 97.91 -52.09 80 -30 80C-7.91 80 10 97.91 10 120ZM10 310C10 332.09 -7.91 350 -30 350C-52.09 350 -70 332.09 -70 310C-70 287.91 -52.09 270 -30 270C-7.91 270 10 287.91 10 310ZM10 430C10 452.09 -7.91 470 -30 470C-52.09 470 -70 452.09 -70 430C-70 407.91 -52.09 390 -30 390C-7.91 390 10 407.91 10 430ZM10 550C10 572.09 -7.91 590 -30 590C-52.09 590 -70 572.09 -70 550C-70 527.91 -52.09 510 -30 510C-7.91 510 10 527.91 10 550Z',
      },
      { line: 'outline', d: 'M-175 -320L-260 -320L-260 320L-175 320' },
    ],
  },
  {
    id: 'led-soft-panel',
    lengthMm: 300,
    widthMm: 650,
    box: [-150, -325, 150, 325],
    words: 'led soft panel deep high power',
    paths: [
      { line: 'outline', d: 'M-150 -200L20 -325L150 -325L150 325L20 325L-150 200Z' },
      { line: 'detail', d: 'M70 -325L70 325' },
      {
        line: 'solid',
        d: 'M-24 -110C-24 -90.12 -40.12 -74 -60 -74C-79.88 -74 -96 -90.12 -96 -110C-96 -129.88 -79.88 -146 -60 -146C-40.12 -146 -24 -129.88 -24 -110ZM-24 0C-24 19.88 -40.12 36 -60 36C-79.88 36 -96 19.88 -96 0C-96 -19.88 -79.88 -36 -60 -36C-40.12 -36 -24 -19.88 -24 0ZM-24 110C-24 129.88 -40.12 146 -60 146C-79.88 146 -96 129.88 -96 110C-96 90.12 -79.88 74 -60 74C-40.12 74 -24 90.12 -24 110Z',
      },
    ],
  },
  {
    id: 'led-soft-panel-long',
    lengthMm: 300,
    widthMm: 1290,
    box: [-150, -645, 150, 645],
    words: 'led soft panel deep long high power',
    paths: [
      { line: 'outline', d: 'M-150 -460L20 -645L150 -645L150 645L20 645L-150 460Z' },
      { line: 'detail', d: 'M60 -645L60 645M-150 0L60 0' },
      {
        line: 'solid',
        d: 'M-8 -340C-8 -316.8 -26.8 -298 -50 -298C-73.2 -298 -92 -316.8 -92 -340C-92 -363.2 -73.2 -382 -50 -382C-26.8 -382 -8 -363.2 -8 -340ZM-8 -200C-8 -176.8 -26.8 -158 -50 -158C-73.2 -158 -92 -176.8 -92 -200C-92 -223.2 -73.2 -242 -50 -242C-26.8 -242 -8 -223.2 -8 -200ZM-8 200C-8 223.2 -26.8 242 -50 242C-73.2 242 -92 223.2 -92 200C-92 176.8 -73.2 158 -50 158C-26.8 158 -8 176.8 -8 200ZM-8 340C-8 363.2 -26.8 382 -50 382C-73.2 382 -92 363.2 -92 340C-92 316.8 -73.2 298 -50 298C-26.8 298 -8 316.8 -8 340Z',
      },
    ],
  },
  {
    id: 'led-tube-short',
    lengthMm: 45,
    widthMm: 600,
    box: [-22.5, -300, 22.5, 300],
    words: 'led tube short stick two feet',
    paths: [
      { line: 'outline', d: 'M-7.5 -300L22.5 -300L22.5 300L-7.5 300Z' },
      {
        line: 'solid',
        d: 'M-22.5 -90L-7.5 -90L-7.5 90L-22.5 90ZM-7.5 -300L22.5 -300L22.5 -160L-7.5 -160ZM-7.5 160L22.5 160L22.5 300L-7.5 300ZM0 -40L15 -40L15 40L0 40Z',
      },
    ],
  },
  {
    id: 'led-tube-long',
    lengthMm: 60,
    widthMm: 2400,
    box: [-30, -1200, 30, 1200],
    words: 'led tube long stick eight feet',
    paths: [
      { line: 'outline', d: 'M-10 -1200L30 -1200L30 1200L-10 1200Z' },
      {
        line: 'solid',
        d: 'M-30 -1020L-10 -1020L-10 -780L-30 -780ZM-30 -420L-10 -420L-10 -180L-30 -180ZM-30 180L-10 180L-10 420L-30 420ZM-30 780L-10 780L-10 1020L-30 1020ZM-10 -170L30 -170L30 170L-10 170Z',
      },
      { line: 'detail', d: 'M10 -1140L10 -170M10 170L10 1140' },
    ],
  },
  {
    id: 'pixel-tube-short',
    lengthMm: 48,
    widthMm: 600,
    box: [-24, -300, 24, 300],
    words: 'pixel tube short pixels',
    paths: [
      { line: 'outline', d: 'M-24 -300L24 -300L24 300L-24 300Z' },
      {
        line: 'solid',
        d: 'M-24 -300L0 -300L0 -100L-24 -100ZM0 -100L24 -100L24 100L0 100ZM-24 100L0 100L0 300L-24 300Z',
      },
    ],
  },
  {
    id: 'pixel-tube-long',
    lengthMm: 60,
    widthMm: 2400,
    box: [-30, -1200, 30, 1200],
    words: 'pixel tube long pixels',
    paths: [
      { line: 'outline', d: 'M-30 -1200L30 -1200L30 1200L-30 1200Z' },
      {
        line: 'solid',
        d: 'M-30 -1200L0 -1200L0 -981.8L-30 -981.8ZM0 -981.8L30 -981.8L30 -763.6L0 -763.6ZM-30 -763.6L0 -763.6L0 -545.4L-30 -545.4ZM0 -545.5L30 -545.5L30 -327.3L0 -327.3ZM-30 -327.3L0 -327.3L0 -109.1L-30 -109.1ZM0 -109.1L30 -109.1L30 109.1L0 109.1ZM-30 109.1L0 109.1L0 327.3L-30 327.3ZM0 327.3L30 327.3L30 545.5L0 545.5ZM-30 545.5L0 545.5L0 763.7L-30 763.7ZM0 763.6L30 763.6L30 981.8L0 981.8ZM-30 981.8L0 981.8L0 1200L-30 1200Z',
      },
    ],
  },
  {
    id: 'led-strobe',
    lengthMm: 250,
    widthMm: 450,
    box: [-125, -225, 125, 225],
    words: 'led strobe bar flash',
    paths: [
      {
        line: 'outline',
        d: 'M-115 -225L115 -225C120.52 -225 125 -220.52 125 -215L125 215C125 220.52 120.52 225 115 225L-115 225C-120.52 225 -125 220.52 -125 215L-125 -215C-125 -220.52 -120.52 -225 -115 -225Z',
      },
      { line: 'detail', d: 'M55 -225L55 225' },
      { line: 'solid', d: 'M-10 -150L-90 20L-35 20L-70 150L40 -40L-20 -40L20 -150Z' },
    ],
  },
  {
    id: 'led-mat-large',
    lengthMm: 180,
    widthMm: 1320,
    box: [-120, -660, 60, 660],
    words: 'led mat large square flexible on a frame',
    paths: [
      {
        line: 'outline',
        d: 'M-40 -600L40 -600C51.05 -600 60 -591.05 60 -580L60 580C60 591.05 51.05 600 40 600L-40 600C-51.05 600 -60 591.05 -60 580L-60 -580C-60 -591.05 -51.05 -600 -40 -600Z',
      },
      { line: 'detail', d: 'M-60 -600L60 -200L-60 200L60 600M60 -600L-60 -200L60 200L-60 600' },
      {
        line: 'solid',
        d: 'M0 -600C0 -566.86 -26.86 -540 -60 -540C-93.14 -540 -120 -566.86 -120 -600C-120 -633.14 -93.14 -660 -60 -660C-26.86 -660 0 -633.14 0 -600ZM0 600C0 633.14 -26.86 660 -60 660C-93.14 660 -120 633.14 -120 600C-120 566.86 -93.14 540 -60 540C-26.86 540 0 566.86 0 600Z',
      },
    ],
  },
  {
    id: 'led-mat-round',
    lengthMm: 200,
    widthMm: 600,
    box: [-130, -300, 70, 300],
    words: 'led mat round disc flexible',
    paths: [
      {
        line: 'outline',
        d: 'M70 0C70 165.69 38.66 300 0 300C-38.66 300 -70 165.69 -70 0C-70 -165.69 -38.66 -300 0 -300C38.66 -300 70 -165.69 70 0Z',
      },
      { line: 'detail', d: 'M0 -300L0 300' },
      {
        line: 'solid',
        d: 'M24 -150C24 -136.75 13.25 -126 0 -126C-13.25 -126 -24 -136.75 -24 -150C-24 -163.25 -13.25 -174 0 -174C13.25 -174 24 -163.25 24 -150ZM24 0C24 13.25 13.25 24 0 24C-13.25 24 -24 13.25 -24 0C-24 -13.25 -13.25 -24 0 -24C13.25 -24 24 -13.25 24 0ZM24 150C24 163.25 13.25 174 0 174C-13.25 174 -24 163.25 -24 150C-24 136.75 -13.25 126 0 126C13.25 126 24 136.75 24 150Z',
      },
      { line: 'outline', d: 'M-70 0L-130 0' },
    ],
  },
  {
    id: 'led-blanket',
    lengthMm: 300,
    widthMm: 2640,
    box: [-150, -1320, 150, 1320],
    words: 'led blanket large frame',
    paths: [
      { line: 'outline', d: 'M-40 -1220L40 -1220L40 1220L-40 1220Z' },
      { line: 'detail', d: 'M-40 -1220L40 -915L-40 -610L40 -305L-40 0L40 305L-40 610L40 915L-40 1220' },
      { line: 'outline', d: 'M-110 -1320L110 -1320L110 -1120L-110 -1120Z' },
      { line: 'outline', d: 'M-110 1120L110 1120L110 1320L-110 1320Z' },
      {
        line: 'outline',
        d: 'M150 0C150 82.84 82.84 150 0 150C-82.84 150 -150 82.84 -150 0C-150 -82.84 -82.84 -150 0 -150C82.84 -150 150 -82.84 150 0Z',
      },
    ],
  },
  {
    id: 'moving-wash',
    lengthMm: 390,
    widthMm: 350,
    box: [-190, -175, 200, 175],
    words: 'moving head wash lenses automated led',
    paths: [
      {
        line: 'outline',
        d: 'M-178 -110L-82 -110C-75.37 -110 -70 -104.63 -70 -98L-70 98C-70 104.63 -75.37 110 -82 110L-178 110C-184.63 110 -190 104.63 -190 98L-190 -98C-190 -104.63 -184.63 -110 -178 -110Z',
      },
      { line: 'outline', d: 'M-70 -110L-70 -175L70 -175M-70 110L-70 175L70 175' },
      {
        line: 'outline',
        d: 'M200 0C200 69.04 144.04 125 75 125C5.96 125 -50 69.04 -50 0C-50 -69.04 5.96 -125 75 -125C144.04 -125 200 -69.04 200 0Z',
      },
      {
        line: 'solid',
        d: 'M97 0C97 12.15 87.15 22 75 22C62.85 22 53 12.15 53 0C53 -12.15 62.85 -22 75 -22C87.15 -22 97 -12.15 97 0ZM97 -70C97 -57.85 87.15 -48 75 -48C62.85 -48 53 -57.85 53 -70C53 -82.15 62.85 -92 75 -92C87.15 -92 97 -82.15 97 -70ZM97 70C97 82.15 87.15 92 75 92C62.85 92 53 82.15 53 70C53 57.85 62.85 48 75 48C87.15 48 97 57.85 97 70ZM37 -35C37 -22.85 27.15 -13 15 -13C2.85 -13 -7 -22.85 -7 -35C-7 -47.15 2.85 -57 15 -57C27.15 -57 37 -47.15 37 -35ZM37 35C37 47.15 27.15 57 15 57C2.85 57 -7 47.15 -7 35C-7 22.85 2.85 13 15 13C27.15 13 37 22.85 37 35ZM157 -35C157 -22.85 147.15 -13 135 -13C122.85 -13 113 -22.85 113 -35C113 -47.15 122.85 -57 135 -57C147.15 -57 157 -47.15 157 -35ZM157 35C157 47.15 147.15 57 135 57C122.85 57 113 47.15 113 35C113 22.85 122.85 13 135 13C147.15 13 157 22.85 157 35Z',
      },
    ],
  },
  {
    id: 'moving-bar',
    lengthMm: 290,
    widthMm: 1000,
    box: [-140, -500, 150, 500],
    words: 'moving bar tilting batten automated led',
    paths: [
      {
        line: 'outline',
        d: 'M-130 -500L-70 -500C-64.48 -500 -60 -495.52 -60 -490L-60 490C-60 495.52 -64.48 500 -70 500L-130 500C-135.52 500 -140 495.52 -140 490L-140 -490C-140 -495.52 -135.52 -500 -130 -500Z',
      },
      { line: 'outline', d: 'M-60 -500L20 -500L20 -430M-60 500L20 500L20 430' },
      {
        line: 'outline',
        d: 'M40 -430L90 -430C123.14 -430 150 -403.14 150 -370L150 370C150 403.14 123.14 430 90 430L40 430C6.86 430 -20 403.14 -20 370L-20 -370C-20 -403.14 6.86 -430 40 -430Z',
      },
      {
        line: 'solid',
        d: 'M135 -290C135 -251.34 103.66 -220 65 -220C26.34 -220 -5 -251.34 -5 -290C-5 -328.66 26.34 -360 65 -360C103.66 -360 135 -328.66 135 -290ZM135 0C135 38.66 103.66 70 65 70C26.34 70 -5 38.66 -5 0C-5 -38.66 26.34 -70 65 -70C103.66 -70 135 -38.66 135 0ZM135 290C135 328.66 103.66 360 65 360C26.34 360 -5 328.66 -5 290C-5 251.34 26.34 220 65 220C103.66 220 135 251.34 135 290Z',
      },
    ],
  },
  {
    id: 'lantern-led',
    lengthMm: 660,
    widthMm: 660,
    box: [-330, -330, 330, 330],
    words: 'lantern globe ball soft led',
    paths: [
      {
        line: 'outline',
        d: 'M330 0C330 182.25 182.25 330 0 330C-182.25 330 -330 182.25 -330 0C-330 -182.25 -182.25 -330 0 -330C182.25 -330 330 -182.25 330 0Z',
      },
      { line: 'detail', d: 'M-286 -165L286 -165M-286 165L286 165' },
      {
        line: 'solid',
        d: 'M44 0C44 24.3 24.3 44 0 44C-24.3 44 -44 24.3 -44 0C-44 -24.3 -24.3 -44 0 -44C24.3 -44 44 -24.3 44 0ZM-76 0C-76 24.3 -95.7 44 -120 44C-144.3 44 -164 24.3 -164 0C-164 -24.3 -144.3 -44 -120 -44C-95.7 -44 -76 -24.3 -76 0ZM164 0C164 24.3 144.3 44 120 44C95.7 44 76 24.3 76 0C76 -24.3 95.7 -44 120 -44C144.3 -44 164 -24.3 164 0Z',
      },
    ],
  },
  {
    id: 'balloon-helium',
    lengthMm: 4200,
    widthMm: 4200,
    box: [-2100, -2100, 2100, 2100],
    words: 'balloon helium sphere tethered',
    paths: [
      {
        line: 'outline',
        d: 'M1750 0C1750 966.5 966.5 1750 0 1750C-966.5 1750 -1750 966.5 -1750 0C-1750 -966.5 -966.5 -1750 0 -1750C966.5 -1750 1750 -966.5 1750 0Z',
      },
      {
        line: 'detail',
        d: 'M-1237 -1237L-2100 -2100M1237 -1237L2100 -2100M-1237 1237L-2100 2100M1237 1237L2100 2100M1100 0C1100 607.51 607.51 1100 0 1100C-607.51 1100 -1100 607.51 -1100 0C-1100 -607.51 -607.51 -1100 0 -1100C607.51 -1100 1100 -607.51 1100 0Z',
      },
      {
        line: 'solid',
        d: 'M240 0C240 132.55 132.55 240 0 240C-132.55 240 -240 132.55 -240 0C-240 -132.55 -132.55 -240 0 -240C132.55 -240 240 -132.55 240 0Z',
      },
    ],
  },
  {
    id: 'balloon-tube',
    lengthMm: 1000,
    widthMm: 4000,
    box: [-500, -2000, 500, 2000],
    words: 'balloon tube sausage cylinder',
    paths: [
      {
        line: 'outline',
        d: 'M-500 -1500C-500 -1776.14 -276.14 -2000 0 -2000C276.14 -2000 500 -1776.14 500 -1500L500 1500C500 1776.14 276.14 2000 0 2000C-276.14 2000 -500 1776.14 -500 1500Z',
      },
      {
        line: 'detail',
        d: 'M500 0C500 138.07 276.14 250 0 250C-276.14 250 -500 138.07 -500 0C-500 -138.07 -276.14 -250 0 -250C276.14 -250 500 -138.07 500 0ZM0 -2000L0 2000',
      },
      {
        line: 'solid',
        d: 'M120 -1100C120 -1033.73 66.27 -980 0 -980C-66.27 -980 -120 -1033.73 -120 -1100C-120 -1166.27 -66.27 -1220 0 -1220C66.27 -1220 120 -1166.27 120 -1100ZM120 1100C120 1166.27 66.27 1220 0 1220C-66.27 1220 -120 1166.27 -120 1100C-120 1033.73 -66.27 980 0 980C66.27 980 120 1033.73 120 1100Z',
      },
    ],
  },
  {
    id: 'balloon-box',
    lengthMm: 2400,
    widthMm: 3600,
    box: [-1200, -1800, 1200, 1800],
    words: 'balloon box helium pad rectangular',
    paths: [
      {
        line: 'outline',
        d: 'M-700 -1800L700 -1800C976.14 -1800 1200 -1576.14 1200 -1300L1200 1300C1200 1576.14 976.14 1800 700 1800L-700 1800C-976.14 1800 -1200 1576.14 -1200 1300L-1200 -1300C-1200 -1576.14 -976.14 -1800 -700 -1800Z',
      },
      { line: 'detail', d: 'M-1200 -600L1200 -600M-1200 600L1200 600M0 -1800L0 1800' },
      {
        line: 'solid',
        d: 'M-430 0C-430 93.89 -506.11 170 -600 170C-693.89 170 -770 93.89 -770 0C-770 -93.89 -693.89 -170 -600 -170C-506.11 -170 -430 -93.89 -430 0ZM770 0C770 93.89 693.89 170 600 170C506.11 170 430 93.89 430 0C430 -93.89 506.11 -170 600 -170C693.89 -170 770 -93.89 770 0Z',
      },
    ],
  },
  {
    id: 'practical-floor',
    lengthMm: 400,
    widthMm: 400,
    box: [-200, -200, 200, 200],
    words: 'practical floor standing lamp shade',
    paths: [
      {
        line: 'outline',
        d: 'M200 0C200 110.46 110.46 200 0 200C-110.46 200 -200 110.46 -200 0C-200 -110.46 -110.46 -200 0 -200C110.46 -200 200 -110.46 200 0Z',
      },
      {
        line: 'detail',
        d: 'M113 0C113 62.41 62.41 113 0 113C-62.41 113 -113 62.41 -113 0C-113 -62.41 -62.41 -113 0 -113C62.41 -113 113 -62.41 113 0ZM80 80L141 141M-80 80L-141 141M80 -80L141 -141M-80 -80L-141 -141',
      },
      {
        line: 'solid',
        d: 'M64 0C64 35.35 35.35 64 0 64C-35.35 64 -64 35.35 -64 0C-64 -35.35 -35.35 -64 0 -64C35.35 -64 64 -35.35 64 0Z',
      },
    ],
  },
  {
    id: 'practical-sconce',
    lengthMm: 130,
    widthMm: 220,
    box: [-80, -110, 50, 110],
    words: 'practical wall sconce bracket',
    paths: [
      { line: 'outline', d: 'M-80 -110L-50 -110L-50 110L-80 110Z' },
      { line: 'outline', d: 'M-50 -90C5.23 -90 50 -49.71 50 0C50 49.71 5.23 90 -50 90Z' },
      { line: 'solid', d: 'M-30 -30L25 0L-30 30Z' },
    ],
  },
  {
    id: 'practical-pendant',
    lengthMm: 400,
    widthMm: 500,
    box: [-200, -300, 200, 200],
    words: 'practical pendant hanging lamp',
    paths: [
      {
        line: 'outline',
        d: 'M200 0C200 110.46 110.46 200 0 200C-110.46 200 -200 110.46 -200 0C-200 -110.46 -110.46 -200 0 -200C110.46 -200 200 -110.46 200 0Z',
      },
      {
        line: 'detail',
        d: 'M140 0C140 77.32 77.32 140 0 140C-77.32 140 -140 77.32 -140 0C-140 -77.32 -77.32 -140 0 -140C77.32 -140 140 -77.32 140 0Z',
      },
      {
        line: 'solid',
        d: 'M55 0C55 30.38 30.38 55 0 55C-30.38 55 -55 30.38 -55 0C-55 -30.38 -30.38 -55 0 -55C30.38 -55 55 -30.38 55 0Z',
      },
      { line: 'detail', d: 'M0 -140L0 -300M-40 -300L40 -300' },
    ],
  },
  {
    id: 'practical-chandelier',
    lengthMm: 685,
    widthMm: 714,
    box: [-312.8, -356.8, 372, 356.8],
    words: 'practical chandelier arms candles',
    paths: [
      {
        line: 'outline',
        d: 'M90 0C90 49.71 49.71 90 0 90C-49.71 90 -90 49.71 -90 0C-90 -49.71 -49.71 -90 0 -90C49.71 -90 90 -49.71 90 0Z',
      },
      { line: 'detail', d: 'M90 0L250 0' },
      {
        line: 'outline',
        d: 'M372 0C372 34.24 344.24 62 310 62C275.76 62 248 34.24 248 0C248 -34.24 275.76 -62 310 -62C344.24 -62 372 -34.24 372 0Z',
      },
      { line: 'detail', d: 'M27.8 85.6L77.3 237.8' },
      {
        line: 'outline',
        d: 'M157.8 294.8C157.8 329.04 130.04 356.8 95.8 356.8C61.56 356.8 33.8 329.04 33.8 294.8C33.8 260.56 61.56 232.8 95.8 232.8C130.04 232.8 157.8 260.56 157.8 294.8Z',
      },
      { line: 'detail', d: 'M-72.8 52.9L-202.3 146.9' },
      {
        line: 'outline',
        d: 'M-188.8 182.2C-188.8 216.44 -216.56 244.2 -250.8 244.2C-285.04 244.2 -312.8 216.44 -312.8 182.2C-312.8 147.96 -285.04 120.2 -250.8 120.2C-216.56 120.2 -188.8 147.96 -188.8 182.2Z',
      },
      { line: 'detail', d: 'M-72.8 -52.9L-202.3 -146.9' },
      {
        line: 'outline',
        d: 'M-188.8 -182.2C-188.8 -147.96 -216.56 -120.2 -250.8 -120.2C-285.04 -120.2 -312.8 -147.96 -312.8 -182.2C-312.8 -216.44 -285.04 -244.2 -250.8 -244.2C-216.56 -244.2 -188.8 -216.44 -188.8 -182.2Z',
      },
      { line: 'detail', d: 'M27.8 -85.6L77.3 -237.8' },
      {
        line: 'outline',
        d: 'M157.8 -294.8C157.8 -260.56 130.04 -232.8 95.8 -232.8C61.56 -232.8 33.8 -260.56 33.8 -294.8C33.8 -329.04 61.56 -356.8 95.8 -356.8C130.04 -356.8 157.8 -329.04 157.8 -294.8Z',
      },
    ],
  },
  {
    id: 'practical-candle',
    lengthMm: 71,
    widthMm: 52,
    box: [-38, -26, 32.5, 26],
    words: 'practical candle flame bulb',
    paths: [
      {
        line: 'outline',
        d: 'M14 0C14 14.36 2.36 26 -12 26C-26.36 26 -38 14.36 -38 0C-38 -14.36 -26.36 -26 -12 -26C2.36 -26 14 -14.36 14 0Z',
      },
      { line: 'outline', d: 'M10 -20C40 -6.67 40 6.67 10 20' },
      { line: 'solid', d: 'M-24 -8L-2 0L-24 8Z' },
    ],
  },
  {
    id: 'practical-led',
    lengthMm: 112,
    widthMm: 88,
    box: [-56, -44, 56, 44],
    words: 'practical led bulb',
    paths: [
      {
        line: 'outline',
        d: 'M56 0C56 24.3 36.3 44 12 44C-12.3 44 -32 24.3 -32 0C-32 -24.3 -12.3 -44 12 -44C36.3 -44 56 -24.3 56 0Z',
      },
      { line: 'outline', d: 'M-56 -20L-24 -20L-24 20L-56 20Z' },
      {
        line: 'solid',
        d: 'M9 -16C9 -11.03 4.97 -7 0 -7C-4.97 -7 -9 -11.03 -9 -16C-9 -20.97 -4.97 -25 0 -25C4.97 -25 9 -20.97 9 -16ZM9 16C9 20.97 4.97 25 0 25C-4.97 25 -9 20.97 -9 16C-9 11.03 -4.97 7 0 7C4.97 7 9 11.03 9 16ZM37 0C37 4.97 32.97 9 28 9C23.03 9 19 4.97 19 0C19 -4.97 23.03 -9 28 -9C32.97 -9 37 -4.97 37 0Z',
      },
    ],
  },
  {
    id: 'practical-fluorescent',
    lengthMm: 120,
    widthMm: 1260,
    box: [-60, -630, 60, 630],
    words: 'practical fluorescent ceiling fitting tube',
    paths: [
      {
        line: 'outline',
        d: 'M-52 -630L52 -630C56.42 -630 60 -626.42 60 -622L60 622C60 626.42 56.42 630 52 630L-52 630C-56.42 630 -60 626.42 -60 622L-60 -622C-60 -626.42 -56.42 -630 -52 -630Z',
      },
      { line: 'solid', d: 'M-45 -600L45 -600L45 -490L-45 -490ZM-45 490L45 490L45 600L-45 600Z' },
      { line: 'detail', d: 'M-18 -490L-18 490M18 -490L18 490' },
    ],
  },
  {
    id: 'practical-string',
    lengthMm: 275,
    widthMm: 2110,
    box: [-75, -1055, 200, 1055],
    words: 'practical string festoon bulbs',
    paths: [
      {
        line: 'detail',
        d: 'M-20 -1000C73.33 -833.33 73.33 -666.67 -20 -500C73.33 -333.33 73.33 -166.67 -20 0C73.33 166.67 73.33 333.33 -20 500C73.33 666.67 73.33 833.33 -20 1000',
      },
      {
        line: 'outline',
        d: 'M200 -750C200 -689.25 150.75 -640 90 -640C29.25 -640 -20 -689.25 -20 -750C-20 -810.75 29.25 -860 90 -860C150.75 -860 200 -810.75 200 -750Z',
      },
      {
        line: 'outline',
        d: 'M200 -250C200 -189.25 150.75 -140 90 -140C29.25 -140 -20 -189.25 -20 -250C-20 -310.75 29.25 -360 90 -360C150.75 -360 200 -310.75 200 -250Z',
      },
      {
        line: 'outline',
        d: 'M200 250C200 310.75 150.75 360 90 360C29.25 360 -20 310.75 -20 250C-20 189.25 29.25 140 90 140C150.75 140 200 189.25 200 250Z',
      },
      {
        line: 'outline',
        d: 'M200 750C200 810.75 150.75 860 90 860C29.25 860 -20 810.75 -20 750C-20 689.25 29.25 640 90 640C150.75 640 200 689.25 200 750Z',
      },
      {
        line: 'solid',
        d: 'M35 -1000C35 -969.62 10.38 -945 -20 -945C-50.38 -945 -75 -969.62 -75 -1000C-75 -1030.38 -50.38 -1055 -20 -1055C10.38 -1055 35 -1030.38 35 -1000ZM35 -500C35 -469.62 10.38 -445 -20 -445C-50.38 -445 -75 -469.62 -75 -500C-75 -530.38 -50.38 -555 -20 -555C10.38 -555 35 -530.38 35 -500ZM35 0C35 30.38 10.38 55 -20 55C-50.38 55 -75 30.38 -75 0C-75 -30.38 -50.38 -55 -20 -55C10.38 -55 35 -30.38 35 0ZM35 500C35 530.38 10.38 555 -20 555C-50.38 555 -75 530.38 -75 500C-75 469.62 -50.38 445 -20 445C10.38 445 35 469.62 35 500ZM35 1000C35 1030.38 10.38 1055 -20 1055C-50.38 1055 -75 1030.38 -75 1000C-75 969.62 -50.38 945 -20 945C10.38 945 35 969.62 35 1000Z',
      },
    ],
  },
  {
    id: 'practical-screen',
    lengthMm: 210,
    widthMm: 1100,
    box: [-150, -550, 60, 550],
    words: 'practical television screen monitor picture',
    paths: [
      { line: 'outline', d: 'M-60 -350L-20 -550L60 -550L60 550L-20 550L-60 350Z' },
      { line: 'detail', d: 'M20 -550L20 550' },
      { line: 'outline', d: 'M-60 -150L-150 -220L-150 220L-60 150' },
    ],
  },
  {
    id: 'fluorescent-bank-large',
    lengthMm: 340,
    widthMm: 1400,
    box: [-120, -700, 220, 700],
    words: 'fluorescent bank four tubes wide barn doors',
    paths: [
      {
        line: 'outline',
        d: 'M-100 -640L100 -640C111.05 -640 120 -631.05 120 -620L120 620C120 631.05 111.05 640 100 640L-100 640C-111.05 640 -120 631.05 -120 620L-120 -620C-120 -631.05 -111.05 -640 -100 -640Z',
      },
      { line: 'detail', d: 'M-60 -580L-60 580M0 -580L0 580M60 -580L60 580' },
      { line: 'outline', d: 'M120 -640L220 -700M120 640L220 700' },
    ],
  },
  {
    id: 'ballast-small',
    lengthMm: 260,
    widthMm: 160,
    box: [-130, -80, 130, 80],
    words: 'ballast supply discharge electronic small',
    paths: [
      {
        line: 'outline',
        d: 'M-94 -80L94 -80C113.88 -80 130 -63.88 130 -44L130 44C130 63.88 113.88 80 94 80L-94 80C-113.88 80 -130 63.88 -130 44L-130 -44C-130 -63.88 -113.88 -80 -94 -80Z',
      },
      { line: 'detail', d: 'M-80 0C-53.33 -58.67 -26.67 -58.67 0 0C26.67 58.67 53.33 58.67 80 0' },
    ],
  },
  {
    id: 'ballast-large',
    lengthMm: 600,
    widthMm: 430,
    box: [-300, -215, 300, 215],
    words: 'ballast supply discharge electronic large wheels',
    paths: [
      {
        line: 'outline',
        d: 'M-288 -180L288 -180C294.63 -180 300 -174.63 300 -168L300 168C300 174.63 294.63 180 288 180L-288 180C-294.63 180 -300 174.63 -300 168L-300 -168C-300 -174.63 -294.63 -180 -288 -180Z',
      },
      {
        line: 'detail',
        d: 'M-210 0C-153.33 -120 -96.67 -120 -40 0C16.67 120 73.33 120 130 0M200 -180L200 180M250 -180L250 180',
      },
      {
        line: 'solid',
        d: 'M-250 -215L-140 -215L-140 -180L-250 -180ZM-250 180L-140 180L-140 215L-250 215ZM140 -215L250 -215L250 -180L140 -180ZM140 180L250 180L250 215L140 215Z',
      },
    ],
  },
  {
    id: 'ballast-magnetic',
    lengthMm: 540,
    widthMm: 380,
    box: [-270, -190, 270, 190],
    words: 'ballast magnetic choke coil discharge',
    paths: [
      { line: 'outline', d: 'M-270 -190L270 -190L270 190L-270 190Z' },
      {
        line: 'detail',
        d: 'M-200 0C-200 -27.61 -177.61 -50 -150 -50C-122.39 -50 -100 -27.61 -100 0C-100 -27.61 -77.61 -50 -50 -50C-22.39 -50 0 -27.61 0 0C0 -27.61 22.39 -50 50 -50C77.61 -50 100 -27.61 100 0C100 -27.61 122.39 -50 150 -50C177.61 -50 200 -27.61 200 0M-200 90L200 90M-200 125L200 125',
      },
    ],
  },
  {
    id: 'c-stand',
    lengthMm: 775,
    widthMm: 760,
    box: [-300, -430, 475, 330],
    words: 'stand grip century staggered legs',
    paths: [
      {
        line: 'solid',
        d: 'M50 0C50 27.61 27.61 50 0 50C-27.61 50 -50 27.61 -50 0C-50 -27.61 -27.61 -50 0 -50C27.61 -50 50 -27.61 50 0Z',
      },
      {
        line: 'detail',
        d: 'M-25 0L-25 -430M-25 -430L-60 -430M18 18L385 250M18 -18L250 -385M-10 15L-300 330',
      },
      { line: 'outline', d: 'M0 0L475 -60' },
      {
        line: 'outline',
        d: 'M90 0C90 49.71 49.71 90 0 90C-49.71 90 -90 49.71 -90 0C-90 -49.71 -49.71 -90 0 -90C49.71 -90 90 -49.71 90 0Z',
      },
    ],
  },
  {
    id: 'stand-windup',
    lengthMm: 1300,
    widthMm: 1300,
    box: [-650, -650, 650, 650],
    words: 'stand wind-up crank heavy handle',
    paths: [
      { line: 'detail', d: 'M0 0L650 0M0 0L-325 562.9M0 0L-325 -562.9' },
      { line: 'outline', d: 'M-190 -190L190 -190L190 190L-190 190Z' },
      { line: 'detail', d: 'M-130 -130L130 130M-130 130L130 -130' },
      { line: 'outline', d: 'M-190 0L-400 0L-400 -210' },
      {
        line: 'solid',
        d: 'M-325 -230C-325 -188.58 -358.58 -155 -400 -155C-441.42 -155 -475 -188.58 -475 -230C-475 -271.42 -441.42 -305 -400 -305C-358.58 -305 -325 -271.42 -325 -230Z',
      },
      {
        line: 'detail',
        d: 'M650 0C650 358.99 358.99 650 0 650C-358.99 650 -650 358.99 -650 0C-650 -358.99 -358.99 -650 0 -650C358.99 -650 650 -358.99 650 0Z',
      },
    ],
  },
  {
    id: 'stand-wheels',
    lengthMm: 940,
    widthMm: 1061,
    box: [-600, -530.3, 340, 530.3],
    words: 'stand rolling wheels junior',
    paths: [
      { line: 'detail', d: 'M0 0L260 450.3M0 0L-520 0M0 0L260 -450.3' },
      {
        line: 'solid',
        d: 'M70 0C70 38.66 38.66 70 0 70C-38.66 70 -70 38.66 -70 0C-70 -38.66 -38.66 -70 0 -70C38.66 -70 70 -38.66 70 0Z',
      },
      {
        line: 'outline',
        d: 'M340 450.3C340 494.48 304.18 530.3 260 530.3C215.82 530.3 180 494.48 180 450.3C180 406.12 215.82 370.3 260 370.3C304.18 370.3 340 406.12 340 450.3Z',
      },
      {
        line: 'outline',
        d: 'M-440 0C-440 44.18 -475.82 80 -520 80C-564.18 80 -600 44.18 -600 0C-600 -44.18 -564.18 -80 -520 -80C-475.82 -80 -440 -44.18 -440 0Z',
      },
      {
        line: 'outline',
        d: 'M340 -450.3C340 -406.12 304.18 -370.3 260 -370.3C215.82 -370.3 180 -406.12 180 -450.3C180 -494.48 215.82 -530.3 260 -530.3C304.18 -530.3 340 -494.48 340 -450.3Z',
      },
    ],
  },
  {
    id: 'stand-base',
    lengthMm: 661,
    widthMm: 762,
    box: [-261, -381, 400, 381],
    words: 'stand turtle base floor plate low',
    paths: [
      { line: 'outline', d: 'M400 -70L400 70L60 110L-140 381L-261 311L-125 0L-261 -311L-140 -381L60 -110Z' },
      {
        line: 'outline',
        d: 'M60 0C60 33.14 33.14 60 0 60C-33.14 60 -60 33.14 -60 0C-60 -33.14 -33.14 -60 0 -60C33.14 -60 60 -33.14 60 0Z',
      },
      {
        line: 'solid',
        d: 'M26 0C26 14.36 14.36 26 0 26C-14.36 26 -26 14.36 -26 0C-26 -14.36 -14.36 -26 0 -26C14.36 -26 26 -14.36 26 0Z',
      },
    ],
  },
  {
    id: 'stand-boom',
    lengthMm: 1450,
    widthMm: 1300,
    box: [-650, -650, 800, 650],
    words: 'stand with built-in boom arm',
    paths: [
      {
        line: 'detail',
        d: 'M650 0C650 358.99 358.99 650 0 650C-358.99 650 -650 358.99 -650 0C-650 -358.99 -358.99 -650 0 -650C358.99 -650 650 -358.99 650 0ZM0 0L325 562.9M0 0L-650 0M0 0L325 -562.9',
      },
      { line: 'outline', d: 'M-450 -45L800 -45L800 45L-450 45Z' },
      { line: 'outline', d: 'M-560 -120L-450 -120L-450 120L-560 120Z' },
      {
        line: 'outline',
        d: 'M110 0C110 60.75 60.75 110 0 110C-60.75 110 -110 60.75 -110 0C-110 -60.75 -60.75 -110 0 -110C60.75 -110 110 -60.75 110 0Z',
      },
    ],
  },
  {
    id: 'stand-tbar',
    lengthMm: 1000,
    widthMm: 1200,
    box: [-500, -600, 500, 600],
    words: 'stand t-bar push-up bar',
    paths: [
      {
        line: 'detail',
        d: 'M500 0C500 276.14 276.14 500 0 500C-276.14 500 -500 276.14 -500 0C-500 -276.14 -276.14 -500 0 -500C276.14 -500 500 -276.14 500 0ZM0 0L500 0M0 0L-250 433M0 0L-250 -433',
      },
      { line: 'outline', d: 'M-50 -600L50 -600L50 600L-50 600Z' },
      {
        line: 'solid',
        d: 'M110 0C110 60.75 60.75 110 0 110C-60.75 110 -110 60.75 -110 0C-110 -60.75 -60.75 -110 0 -110C60.75 -110 110 -60.75 110 0Z',
      },
    ],
  },
  {
    id: 'stand-mini',
    lengthMm: 600,
    widthMm: 600,
    box: [-300, -300, 300, 300],
    words: 'stand small table backlight',
    paths: [
      { line: 'solid', d: 'M70 0L-70 0L0 300ZM-35 60.6L35 -60.6L-259.8 -150ZM-35 -60.6L35 60.6L259.8 -150Z' },
      {
        line: 'detail',
        d: 'M300 0C300 165.69 165.69 300 0 300C-165.69 300 -300 165.69 -300 0C-300 -165.69 -165.69 -300 0 -300C165.69 -300 300 -165.69 300 0Z',
      },
      {
        line: 'outline',
        d: 'M80 0C80 44.18 44.18 80 0 80C-44.18 80 -80 44.18 -80 0C-80 -44.18 -44.18 -80 0 -80C44.18 -80 80 -44.18 80 0Z',
      },
    ],
  },
  {
    id: 'generator-portable',
    lengthMm: 565,
    widthMm: 300,
    box: [-310, -150, 255, 150],
    words: 'generator portable inverter petrol handle',
    paths: [
      {
        line: 'outline',
        d: 'M-215 -150L215 -150C237.09 -150 255 -132.09 255 -110L255 110C255 132.09 237.09 150 215 150L-215 150C-237.09 150 -255 132.09 -255 110L-255 -110C-255 -132.09 -237.09 -150 -215 -150Z',
      },
      {
        line: 'outline',
        d: 'M70 0C70 60.75 20.75 110 -40 110C-100.75 110 -150 60.75 -150 0C-150 -60.75 -100.75 -110 -40 -110C20.75 -110 70 -60.75 70 0Z',
      },
      { line: 'detail', d: 'M0 -45C-30 -80 -110 -60 -105 5C-100 75 -20 70 5 40L5 5L-40 5M150 -150L150 150' },
      { line: 'outline', d: 'M-255 -80L-310 -80L-310 80L-255 80' },
    ],
  },
  {
    id: 'generator-truck',
    lengthMm: 5200,
    widthMm: 2100,
    box: [-2600, -1050, 2600, 1050],
    words: 'generator truck mounted large set',
    paths: [
      { line: 'outline', d: 'M-2600 -1050L1100 -1050L1100 1050L-2600 1050Z' },
      {
        line: 'outline',
        d: 'M1100 -950L2100 -950C2433.33 -916.67 2600 -766.67 2600 -500L2600 500C2600 766.67 2433.33 916.67 2100 950L1100 950Z',
      },
      { line: 'detail', d: 'M1800 -940L1800 940' },
      {
        line: 'outline',
        d: 'M0 0C0 414.21 -335.79 750 -750 750C-1164.21 750 -1500 414.21 -1500 0C-1500 -414.21 -1164.21 -750 -750 -750C-335.79 -750 0 -414.21 0 0Z',
      },
      {
        line: 'detail',
        d: 'M-380 -330C-580 -520 -1150 -470 -1150 -30C-1150 390 -620 420 -400 210L-400 0L-680 0',
      },
    ],
  },
  {
    id: 'box-2',
    lengthMm: 300,
    widthMm: 220,
    box: [-150, -110, 150, 110],
    words: 'distribution box one two ways',
    paths: [
      {
        line: 'outline',
        d: 'M-140 -110L140 -110C145.52 -110 150 -105.52 150 -100L150 100C150 105.52 145.52 110 140 110L-140 110C-145.52 110 -150 105.52 -150 100L-150 -100C-150 -105.52 -145.52 -110 -140 -110Z',
      },
      { line: 'detail', d: 'M60 -45L150 -45M60 45L150 45' },
      {
        line: 'solid',
        d: 'M-34 0C-34 19.88 -50.12 36 -70 36C-89.88 36 -106 19.88 -106 0C-106 -19.88 -89.88 -36 -70 -36C-50.12 -36 -34 -19.88 -34 0Z',
      },
    ],
  },
  {
    id: 'box-6',
    lengthMm: 350,
    widthMm: 500,
    box: [-175, -250, 175, 250],
    words: 'distribution box six ways',
    paths: [
      {
        line: 'outline',
        d: 'M-163 -250L163 -250C169.63 -250 175 -244.63 175 -238L175 238C175 244.63 169.63 250 163 250L-163 250C-169.63 250 -175 244.63 -175 238L-175 -238C-175 -244.63 -169.63 -250 -163 -250Z',
      },
      {
        line: 'detail',
        d: 'M40 -250L40 250M40 -83L175 -83M40 83L175 83M107 -250L107 250M-110 -160L-40 -160M-110 160L-40 160',
      },
    ],
  },
  {
    id: 'box-12',
    lengthMm: 450,
    widthMm: 600,
    box: [-225, -300, 225, 300],
    words: 'distribution box twelve ways',
    paths: [
      {
        line: 'outline',
        d: 'M-213 -300L213 -300C219.63 -300 225 -294.63 225 -288L225 288C225 294.63 219.63 300 213 300L-213 300C-219.63 300 -225 294.63 -225 288L-225 -288C-225 -294.63 -219.63 -300 -213 -300Z',
      },
      {
        line: 'detail',
        d: 'M-45 -300L-45 300M-45 -150L225 -150M-45 0L225 0M-45 150L225 150M45 -300L45 300M135 -300L135 300',
      },
      { line: 'solid', d: 'M-170 -120L-95 -120L-95 120L-170 120Z' },
    ],
  },
  {
    id: 'outlet-strip',
    lengthMm: 120,
    widthMm: 570,
    box: [-60, -330, 60, 240],
    words: 'outlet strip several outlets no breaker',
    paths: [
      {
        line: 'outline',
        d: 'M-30 -240L30 -240C46.57 -240 60 -226.57 60 -210L60 210C60 226.57 46.57 240 30 240L-30 240C-46.57 240 -60 226.57 -60 210L-60 -210C-60 -226.57 -46.57 -240 -30 -240Z',
      },
      {
        line: 'outline',
        d: 'M42 -170C42 -146.8 23.2 -128 0 -128C-23.2 -128 -42 -146.8 -42 -170C-42 -193.2 -23.2 -212 0 -212C23.2 -212 42 -193.2 42 -170Z',
      },
      {
        line: 'outline',
        d: 'M42 -57C42 -33.8 23.2 -15 0 -15C-23.2 -15 -42 -33.8 -42 -57C-42 -80.2 -23.2 -99 0 -99C23.2 -99 42 -80.2 42 -57Z',
      },
      {
        line: 'outline',
        d: 'M42 57C42 80.2 23.2 99 0 99C-23.2 99 -42 80.2 -42 57C-42 33.8 -23.2 15 0 15C23.2 15 42 33.8 42 57Z',
      },
      {
        line: 'outline',
        d: 'M42 170C42 193.2 23.2 212 0 212C-23.2 212 -42 193.2 -42 170C-42 146.8 -23.2 128 0 128C23.2 128 42 146.8 42 170Z',
      },
      { line: 'detail', d: 'M0 -240L0 -330' },
    ],
  },
  {
    id: 'outlet-quad',
    lengthMm: 300,
    widthMm: 240,
    box: [-180, -120, 120, 120],
    words: 'outlet quad box four outlets',
    paths: [
      {
        line: 'outline',
        d: 'M-100 -120L100 -120C111.05 -120 120 -111.05 120 -100L120 100C120 111.05 111.05 120 100 120L-100 120C-111.05 120 -120 111.05 -120 100L-120 -100C-120 -111.05 -111.05 -120 -100 -120Z',
      },
      {
        line: 'outline',
        d: 'M-15 -55C-15 -32.91 -32.91 -15 -55 -15C-77.09 -15 -95 -32.91 -95 -55C-95 -77.09 -77.09 -95 -55 -95C-32.91 -95 -15 -77.09 -15 -55Z',
      },
      {
        line: 'outline',
        d: 'M95 -55C95 -32.91 77.09 -15 55 -15C32.91 -15 15 -32.91 15 -55C15 -77.09 32.91 -95 55 -95C77.09 -95 95 -77.09 95 -55Z',
      },
      {
        line: 'outline',
        d: 'M-15 55C-15 77.09 -32.91 95 -55 95C-77.09 95 -95 77.09 -95 55C-95 32.91 -77.09 15 -55 15C-32.91 15 -15 32.91 -15 55Z',
      },
      {
        line: 'outline',
        d: 'M95 55C95 77.09 77.09 95 55 95C32.91 95 15 77.09 15 55C15 32.91 32.91 15 55 15C77.09 15 95 32.91 95 55Z',
      },
      { line: 'detail', d: 'M-120 0L-180 0' },
    ],
  },
  {
    id: 'outlet-duplex',
    lengthMm: 170,
    widthMm: 220,
    box: [-60, -110, 110, 110],
    words: 'outlet duplex wall two',
    paths: [
      { line: 'outline', d: 'M-60 -110C0.75 -110 50 -60.75 50 0C50 60.75 0.75 110 -60 110Z' },
      { line: 'detail', d: 'M-60 -40L110 -40M-60 40L110 40' },
    ],
  },
  {
    id: 'power-splitter',
    lengthMm: 220,
    widthMm: 300,
    box: [-110, -150, 110, 150],
    words: 'splitter power one into several',
    paths: [
      {
        line: 'outline',
        d: 'M-100 -150L100 -150C105.52 -150 110 -145.52 110 -140L110 140C110 145.52 105.52 150 100 150L-100 150C-105.52 150 -110 145.52 -110 140L-110 -140C-110 -145.52 -105.52 -150 -100 -150Z',
      },
      { line: 'detail', d: 'M-110 0L-40 0L30 -90L110 -90M-40 0L30 90L110 90M-40 0L110 0' },
      {
        line: 'solid',
        d: 'M-14 0C-14 14.36 -25.64 26 -40 26C-54.36 26 -66 14.36 -66 0C-66 -14.36 -54.36 -26 -40 -26C-25.64 -26 -14 -14.36 -14 0Z',
      },
    ],
  },
  {
    id: 'dimmer',
    lengthMm: 120,
    widthMm: 340,
    box: [-60, -170, 60, 170],
    words: 'dimmer in-line hand slider',
    paths: [
      {
        line: 'outline',
        d: 'M-40 -110L40 -110C51.05 -110 60 -101.05 60 -90L60 90C60 101.05 51.05 110 40 110L-40 110C-51.05 110 -60 101.05 -60 90L-60 -90C-60 -101.05 -51.05 -110 -40 -110Z',
      },
      { line: 'solid', d: 'M-30 75L30 -75L30 75Z' },
      { line: 'detail', d: 'M0 -110L0 -170M0 110L0 170' },
    ],
  },
  {
    id: 'dimmer-box',
    lengthMm: 360,
    widthMm: 280,
    box: [-180, -140, 180, 140],
    words: 'dimmer box several ways control',
    paths: [
      {
        line: 'outline',
        d: 'M-170 -140L170 -140C175.52 -140 180 -135.52 180 -130L180 130C180 135.52 175.52 140 170 140L-170 140C-175.52 140 -180 135.52 -180 130L-180 -130C-180 -135.52 -175.52 -140 -170 -140Z',
      },
      { line: 'solid', d: 'M-140 90L-10 -90L-10 90Z' },
      { line: 'detail', d: 'M90 -90L180 -90M90 -30L180 -30M90 30L180 30M90 90L180 90' },
    ],
  },
  {
    id: 'dimmer-rack',
    lengthMm: 550,
    widthMm: 480,
    box: [-275, -240, 275, 240],
    words: 'dimmer rack many ways three-phase control',
    paths: [
      {
        line: 'outline',
        d: 'M-265 -240L265 -240C270.52 -240 275 -235.52 275 -230L275 230C275 235.52 270.52 240 265 240L-265 240C-270.52 240 -275 235.52 -275 230L-275 -230C-275 -235.52 -270.52 -240 -265 -240Z',
      },
      { line: 'solid', d: 'M-230 180L0 -180L0 180Z' },
      { line: 'detail', d: 'M80 -240L80 240M80 -120L275 -120M80 0L275 0M80 120L275 120M177 -240L177 240' },
    ],
  },
  {
    id: 'relay-box',
    lengthMm: 380,
    widthMm: 280,
    box: [-190, -140, 190, 140],
    words: 'relay box switch on off ways',
    paths: [
      {
        line: 'outline',
        d: 'M-180 -140L180 -140C185.52 -140 190 -135.52 190 -130L190 130C190 135.52 185.52 140 180 140L-180 140C-185.52 140 -190 135.52 -190 130L-190 -130C-190 -135.52 -185.52 -140 -180 -140Z',
      },
      { line: 'detail', d: 'M-150 40L-90 40L10 -60M30 40L90 40' },
      {
        line: 'solid',
        d: 'M-68 40C-68 52.15 -77.85 62 -90 62C-102.15 62 -112 52.15 -112 40C-112 27.85 -102.15 18 -90 18C-77.85 18 -68 27.85 -68 40ZM52 40C52 52.15 42.15 62 30 62C17.85 62 8 52.15 8 40C8 27.85 17.85 18 30 18C42.15 18 52 27.85 52 40Z',
      },
      { line: 'detail', d: 'M130 -90L190 -90M130 -30L190 -30M130 30L190 30M130 90L190 90' },
    ],
  },
  {
    id: 'transformer',
    lengthMm: 450,
    widthMm: 350,
    box: [-225, -175, 225, 175],
    words: 'transformer two coils isolating step-down',
    paths: [
      {
        line: 'outline',
        d: 'M-215 -175L215 -175C220.52 -175 225 -170.52 225 -165L225 165C225 170.52 220.52 175 215 175L-215 175C-220.52 175 -225 170.52 -225 165L-225 -165C-225 -170.52 -220.52 -175 -215 -175Z',
      },
      {
        line: 'detail',
        d: 'M45 0C45 57.99 -2.01 105 -60 105C-117.99 105 -165 57.99 -165 0C-165 -57.99 -117.99 -105 -60 -105C-2.01 -105 45 -57.99 45 0ZM165 0C165 57.99 117.99 105 60 105C2.01 105 -45 57.99 -45 0C-45 -57.99 2.01 -105 60 -105C117.99 -105 165 -57.99 165 0Z',
      },
    ],
  },
  {
    id: 'converter',
    lengthMm: 240,
    widthMm: 130,
    box: [-120, -65, 120, 65],
    words: 'converter mains supply direct current driver',
    paths: [
      {
        line: 'outline',
        d: 'M-104 -65L104 -65C112.84 -65 120 -57.84 120 -49L120 49C120 57.84 112.84 65 104 65L-104 65C-112.84 65 -120 57.84 -120 49L-120 -49C-120 -57.84 -112.84 -65 -104 -65Z',
      },
      {
        line: 'detail',
        d: 'M-120 65L120 -65M-95 -25C-81.67 -41.67 -68.33 -41.67 -55 -25C-41.67 -8.33 -28.33 -8.33 -15 -25M30 25L95 25M30 45L55 45M70 45L95 45',
      },
    ],
  },
  {
    id: 'inverter',
    lengthMm: 360,
    widthMm: 220,
    box: [-180, -110, 180, 110],
    words: 'inverter battery direct current to mains',
    paths: [
      {
        line: 'outline',
        d: 'M-172 -110L172 -110C176.42 -110 180 -106.42 180 -102L180 102C180 106.42 176.42 110 172 110L-172 110C-176.42 110 -180 106.42 -180 102L-180 -102C-180 -106.42 -176.42 -110 -172 -110Z',
      },
      {
        line: 'detail',
        d: 'M-120 -60L-120 60M-84 -30L-84 30M-20 -110L-20 110M10 0C33.33 -53.33 56.67 -53.33 80 0C103.33 53.33 126.67 53.33 150 0',
      },
      { line: 'solid', d: 'M150 -70L180 -70L180 70L150 70Z' },
    ],
  },
  {
    id: 'cable',
    lengthMm: 500,
    widthMm: 500,
    box: [-200, -200, 300, 300],
    words: 'cable cord extension coil',
    paths: [
      {
        line: 'outline',
        d: 'M200 0C200 110.46 110.46 200 0 200C-110.46 200 -200 110.46 -200 0C-200 -110.46 -110.46 -200 0 -200C110.46 -200 200 -110.46 200 0Z',
      },
      {
        line: 'detail',
        d: 'M150 0C150 82.84 82.84 150 0 150C-82.84 150 -150 82.84 -150 0C-150 -82.84 -82.84 -150 0 -150C82.84 -150 150 -82.84 150 0ZM100 0C100 55.23 55.23 100 0 100C-55.23 100 -100 55.23 -100 0C-100 -55.23 -55.23 -100 0 -100C55.23 -100 100 -55.23 100 0Z',
      },
      { line: 'outline', d: 'M140 143L230 233' },
      { line: 'solid', d: 'M210 265L265 210L300 245L245 300Z' },
    ],
  },
  {
    id: 'feeder',
    lengthMm: 680,
    widthMm: 360,
    box: [-340, -180, 340, 180],
    words: 'feeder single conductors heavy coil set',
    paths: [
      {
        line: 'detail',
        d: 'M60 0C60 99.41 -20.59 180 -120 180C-219.41 180 -300 99.41 -300 0C-300 -99.41 -219.41 -180 -120 -180C-20.59 -180 60 -99.41 60 0ZM120 0C120 99.41 39.41 180 -60 180C-159.41 180 -240 99.41 -240 0C-240 -99.41 -159.41 -180 -60 -180C39.41 -180 120 -99.41 120 0ZM180 0C180 99.41 99.41 180 0 180C-99.41 180 -180 99.41 -180 0C-180 -99.41 -99.41 -180 0 -180C99.41 -180 180 -99.41 180 0ZM240 0C240 99.41 159.41 180 60 180C-39.41 180 -120 99.41 -120 0C-120 -99.41 -39.41 -180 60 -180C159.41 -180 240 -99.41 240 0ZM300 0C300 99.41 219.41 180 120 180C20.59 180 -60 99.41 -60 0C-60 -99.41 20.59 -180 120 -180C219.41 -180 300 -99.41 300 0Z',
      },
      { line: 'solid', d: 'M-340 -30L-290 -30L-290 30L-340 30ZM290 -30L340 -30L340 30L290 30Z' },
    ],
  },
  {
    id: 'multi-cable',
    lengthMm: 420,
    widthMm: 420,
    box: [-210, -210, 210, 210],
    words: 'multi-circuit cable six circuits coil',
    paths: [
      {
        line: 'outline',
        d: 'M210 0C210 115.98 115.98 210 0 210C-115.98 210 -210 115.98 -210 0C-210 -115.98 -115.98 -210 0 -210C115.98 -210 210 -115.98 210 0Z',
      },
      {
        line: 'solid',
        d: 'M151 0C151 19.88 134.88 36 115 36C95.12 36 79 19.88 79 0C79 -19.88 95.12 -36 115 -36C134.88 -36 151 -19.88 151 0ZM93.5 99.6C93.5 119.48 77.38 135.6 57.5 135.6C37.62 135.6 21.5 119.48 21.5 99.6C21.5 79.72 37.62 63.6 57.5 63.6C77.38 63.6 93.5 79.72 93.5 99.6ZM-21.5 99.6C-21.5 119.48 -37.62 135.6 -57.5 135.6C-77.38 135.6 -93.5 119.48 -93.5 99.6C-93.5 79.72 -77.38 63.6 -57.5 63.6C-37.62 63.6 -21.5 79.72 -21.5 99.6ZM-79 0C-79 19.88 -95.12 36 -115 36C-134.88 36 -151 19.88 -151 0C-151 -19.88 -134.88 -36 -115 -36C-95.12 -36 -79 -19.88 -79 0ZM-21.5 -99.6C-21.5 -79.72 -37.62 -63.6 -57.5 -63.6C-77.38 -63.6 -93.5 -79.72 -93.5 -99.6C-93.5 -119.48 -77.38 -135.6 -57.5 -135.6C-37.62 -135.6 -21.5 -119.48 -21.5 -99.6ZM93.5 -99.6C93.5 -79.72 77.38 -63.6 57.5 -63.6C37.62 -63.6 21.5 -79.72 21.5 -99.6C21.5 -119.48 37.62 -135.6 57.5 -135.6C77.38 -135.6 93.5 -119.48 93.5 -99.6Z',
      },
      {
        line: 'detail',
        d: 'M55 0C55 30.38 30.38 55 0 55C-30.38 55 -55 30.38 -55 0C-55 -30.38 -30.38 -55 0 -55C30.38 -55 55 -30.38 55 0Z',
      },
    ],
  },
  {
    id: 'adapter',
    lengthMm: 350,
    widthMm: 140,
    box: [-200, -70, 150, 70],
    words: 'adapter end between unlike connectors',
    paths: [
      { line: 'outline', d: 'M-150 -55L-60 -55L-60 55L-150 55Z' },
      { line: 'outline', d: 'M60 -70L150 -70L150 70L60 70Z' },
      { line: 'detail', d: 'M-60 0L60 0M-150 -20L-200 -20M-150 20L-200 20' },
      {
        line: 'solid',
        d: 'M127 0C127 12.15 117.15 22 105 22C92.85 22 83 12.15 83 0C83 -12.15 92.85 -22 105 -22C117.15 -22 127 -12.15 127 0Z',
      },
    ],
  },
  {
    id: 'tee',
    lengthMm: 350,
    widthMm: 310,
    box: [-190, -155, 160, 155],
    words: 'tee one plug into two outlets',
    paths: [
      { line: 'outline', d: 'M-190 -45L-100 -45L-100 45L-190 45Z' },
      { line: 'detail', d: 'M-100 0L-20 0L-20 -110L60 -110M-20 0L-20 110L60 110' },
      { line: 'outline', d: 'M60 -155L160 -155L160 -65L60 -65Z' },
      { line: 'outline', d: 'M60 65L160 65L160 155L60 155Z' },
    ],
  },
  {
    id: 'data-cable',
    lengthMm: 504,
    widthMm: 492,
    box: [-232, -120, 272, 372],
    words: 'data cable five-pin three-pin control line',
    paths: [
      {
        line: 'outline',
        d: 'M-120 150L-120 20C-120 -57.32 -57.32 -120 20 -120C97.32 -120 160 -57.32 160 20L160 150',
      },
      {
        line: 'outline',
        d: 'M-8 260C-8 321.86 -58.14 372 -120 372C-181.86 372 -232 321.86 -232 260C-232 198.14 -181.86 148 -120 148C-58.14 148 -8 198.14 -8 260Z',
      },
      {
        line: 'outline',
        d: 'M272 260C272 321.86 221.86 372 160 372C98.14 372 48 321.86 48 260C48 198.14 98.14 148 160 148C221.86 148 272 198.14 272 260Z',
      },
      {
        line: 'solid',
        d: 'M-153 232C-153 242.49 -161.51 251 -172 251C-182.49 251 -191 242.49 -191 232C-191 221.51 -182.49 213 -172 213C-161.51 213 -153 221.51 -153 232ZM-139 300C-139 310.49 -147.51 319 -158 319C-168.49 319 -177 310.49 -177 300C-177 289.51 -168.49 281 -158 281C-147.51 281 -139 289.51 -139 300ZM-101 208C-101 218.49 -109.51 227 -120 227C-130.49 227 -139 218.49 -139 208C-139 197.51 -130.49 189 -120 189C-109.51 189 -101 197.51 -101 208ZM-63 300C-63 310.49 -71.51 319 -82 319C-92.49 319 -101 310.49 -101 300C-101 289.51 -92.49 281 -82 281C-71.51 281 -63 289.51 -63 300ZM-49 232C-49 242.49 -57.51 251 -68 251C-78.49 251 -87 242.49 -87 232C-87 221.51 -78.49 213 -68 213C-57.51 213 -49 221.51 -49 232ZM222 260C222 294.24 194.24 322 160 322C125.76 322 98 294.24 98 260C98 225.76 125.76 198 160 198C194.24 198 222 225.76 222 260Z',
      },
    ],
  },
  {
    id: 'network-cable',
    lengthMm: 390,
    widthMm: 490,
    box: [-240, -240, 150, 250],
    words: 'network cable plug eight contacts',
    paths: [
      {
        line: 'outline',
        d: 'M-240 -240C-173.68 -237.4 -111.11 -208.53 -66.09 -159.76C-21.07 -110.99 2.71 -46.32 0 20',
      },
      { line: 'outline', d: 'M-150 20L150 20L150 250L-150 250Z' },
      {
        line: 'solid',
        d: 'M-110 170L-80 170L-80 250L-110 250ZM-48 170L-18 170L-18 250L-48 250ZM18 170L48 170L48 250L18 250ZM80 170L110 170L110 250L80 250Z',
      },
      { line: 'detail', d: 'M-60 20L-60 110L60 110L60 20' },
    ],
  },
  {
    id: 'tails',
    lengthMm: 470,
    widthMm: 240,
    box: [-250, -120, 220, 120],
    words: 'tails bare conductors to a connector',
    paths: [
      {
        line: 'detail',
        d: 'M-250 -120C-150 -120 -53.33 -93.33 40 -40M-250 -60C-150 -60 -53.33 -46.67 40 -20M-250 0L40 0M-250 60C-150 60 -53.33 46.67 40 20M-250 120C-150 120 -53.33 93.33 40 40',
      },
      { line: 'outline', d: 'M40 -75L170 -75L170 75L40 75Z' },
      { line: 'detail', d: 'M170 -40L220 -40M170 0L220 0M170 40L220 40' },
    ],
  },
  {
    id: 'fan-in',
    lengthMm: 470,
    widthMm: 340,
    box: [-260, -170, 210, 170],
    words: 'fan break-in circuits into a multi',
    paths: [
      {
        line: 'solid',
        d: 'M-260 -170L-200 -170L-200 -130L-260 -130ZM-260 -110L-200 -110L-200 -70L-260 -70ZM-260 -50L-200 -50L-200 -10L-260 -10ZM-260 10L-200 10L-200 50L-260 50ZM-260 70L-200 70L-200 110L-260 110ZM-260 130L-200 130L-200 170L-260 170Z',
      },
      {
        line: 'detail',
        d: 'M-200 -150L60 0M-200 -90L60 0M-200 -30L60 0M-200 30L60 0M-200 90L60 0M-200 150L60 0',
      },
      {
        line: 'outline',
        d: 'M210 0C210 44.18 174.18 80 130 80C85.82 80 50 44.18 50 0C50 -44.18 85.82 -80 130 -80C174.18 -80 210 -44.18 210 0Z',
      },
      {
        line: 'solid',
        d: 'M160 0C160 16.57 146.57 30 130 30C113.43 30 100 16.57 100 0C100 -16.57 113.43 -30 130 -30C146.57 -30 160 -16.57 160 0Z',
      },
    ],
  },
  {
    id: 'fan-out',
    lengthMm: 470,
    widthMm: 344,
    box: [-210, -172, 260, 172],
    words: 'fan break-out multi into circuits',
    paths: [
      {
        line: 'outline',
        d: 'M-50 0C-50 44.18 -85.82 80 -130 80C-174.18 80 -210 44.18 -210 0C-210 -44.18 -174.18 -80 -130 -80C-85.82 -80 -50 -44.18 -50 0Z',
      },
      {
        line: 'solid',
        d: 'M-100 0C-100 16.57 -113.43 30 -130 30C-146.57 30 -160 16.57 -160 0C-160 -16.57 -146.57 -30 -130 -30C-113.43 -30 -100 -16.57 -100 0Z',
      },
      {
        line: 'detail',
        d: 'M-60 0L190 -150M-60 0L190 -90M-60 0L190 -30M-60 0L190 30M-60 0L190 90M-60 0L190 150',
      },
      { line: 'outline', d: 'M190 -172L260 -172L260 -128L190 -128Z' },
      { line: 'outline', d: 'M190 -112L260 -112L260 -68L190 -68Z' },
      { line: 'outline', d: 'M190 -52L260 -52L260 -8L190 -8Z' },
      { line: 'outline', d: 'M190 8L260 8L260 52L190 52Z' },
      { line: 'outline', d: 'M190 68L260 68L260 112L190 112Z' },
      { line: 'outline', d: 'M190 128L260 128L260 172L190 172Z' },
    ],
  },
  {
    id: 'pack',
    lengthMm: 130,
    widthMm: 110,
    box: [-65, -55, 65, 55],
    words: 'pack battery brick plate',
    paths: [
      { line: 'outline', d: 'M-65 -55L48 -55L48 55L-65 55Z' },
      { line: 'solid', d: 'M48 -26L65 -26L65 26L48 26Z' },
      { line: 'detail', d: 'M8 -17L8 17M-9 0L25 0M-46 -17L-46 17' },
    ],
  },
  {
    id: 'pack-block',
    lengthMm: 295,
    widthMm: 220,
    box: [-125, -110, 170, 110],
    words: 'pack battery block large handle',
    paths: [
      {
        line: 'outline',
        d: 'M-101 -110L101 -110C114.25 -110 125 -99.25 125 -86L125 86C125 99.25 114.25 110 101 110L-101 110C-114.25 110 -125 99.25 -125 86L-125 -86C-125 -99.25 -114.25 -110 -101 -110Z',
      },
      { line: 'detail', d: 'M-75 -60L-75 60M-39 -30L-39 30M0 -60L0 60M36 -30L36 30' },
      { line: 'outline', d: 'M125 -60L170 -60L170 60L125 60' },
    ],
  },
  {
    id: 'pack-belt',
    lengthMm: 190,
    widthMm: 800,
    box: [-60, -400, 130, 400],
    words: 'pack battery belt',
    paths: [
      {
        line: 'outline',
        d: 'M-60 -400C73.33 -133.33 73.33 133.33 -60 400L10 400C156.67 133.33 156.67 -133.33 10 -400Z',
      },
      { line: 'detail', d: 'M-12 -220L62 -260M35 -110L115 -130M48 0L130 0M35 110L115 130M-12 220L62 260' },
    ],
  },
  {
    id: 'pack-plate',
    lengthMm: 150,
    widthMm: 220,
    box: [-75, -110, 75, 110],
    words: 'plate for packs holder adapter',
    paths: [
      { line: 'outline', d: 'M-30 -110L30 -110L30 110L-30 110Z' },
      { line: 'solid', d: 'M30 -80L75 -60L75 -30L30 -20ZM30 80L75 60L75 30L30 20Z' },
      { line: 'detail', d: 'M-30 0L30 0' },
      { line: 'outline', d: 'M-30 -20L-75 -20L-75 20L-30 20' },
    ],
  },
  {
    id: 'charger',
    lengthMm: 160,
    widthMm: 200,
    box: [-80, -100, 80, 100],
    words: 'charger battery two bays',
    paths: [
      {
        line: 'outline',
        d: 'M-70 -100L70 -100C75.52 -100 80 -95.52 80 -90L80 90C80 95.52 75.52 100 70 100L-70 100C-75.52 100 -80 95.52 -80 90L-80 -90C-80 -95.52 -75.52 -100 -70 -100Z',
      },
      { line: 'detail', d: 'M-80 0L80 0' },
      {
        line: 'solid',
        d: 'M15 -85L-25 -45L0 -45L-15 -15L25 -55L0 -55ZM15 15L-25 55L0 55L-15 85L25 45L0 45Z',
      },
    ],
  },
  {
    id: 'charger-rack',
    lengthMm: 220,
    widthMm: 380,
    box: [-110, -190, 110, 190],
    words: 'charger battery four bays rack',
    paths: [
      {
        line: 'outline',
        d: 'M-100 -190L100 -190C105.52 -190 110 -185.52 110 -180L110 180C110 185.52 105.52 190 100 190L-100 190C-105.52 190 -110 185.52 -110 180L-110 -180C-110 -185.52 -105.52 -190 -100 -190Z',
      },
      { line: 'detail', d: 'M-110 -95L20 -95M-110 0L20 0M-110 95L20 95M20 -190L20 190' },
      { line: 'solid', d: 'M85 -90L35 10L62 10L45 90L98 -15L68 -15Z' },
      {
        line: 'detail',
        d: 'M-65 -167L-65 -117M-40 -154L-40 -130M-65 -73L-65 -23M-40 -60L-40 -36M-65 23L-65 73M-40 36L-40 60M-65 117L-65 167M-40 130L-40 154',
      },
    ],
  },
  {
    id: 'transmitter',
    lengthMm: 160,
    widthMm: 130,
    box: [-80, -65, 80, 65],
    words: 'transmitter radio control aerial',
    paths: [
      {
        line: 'outline',
        d: 'M-72 -65L72 -65C76.42 -65 80 -61.42 80 -57L80 57C80 61.42 76.42 65 72 65L-72 65C-76.42 65 -80 61.42 -80 57L-80 -57C-80 -61.42 -76.42 -65 -72 -65Z',
      },
      {
        line: 'solid',
        d: 'M-80 -65L-40 -65L-40 65L-80 65ZM-1 0C-1 7.73 -7.27 14 -15 14C-22.73 14 -29 7.73 -29 0C-29 -7.73 -22.73 -14 -15 -14C-7.27 -14 -1 -7.73 -1 0Z',
      },
      {
        line: 'detail',
        d: 'M8 -28C16.46 -21.17 21.37 -10.87 21.37 0C21.37 10.87 16.46 21.17 8 28M25 -42C37.69 -31.75 45.06 -16.31 45.06 0C45.06 16.31 37.69 31.75 25 42M42 -56C58.27 -41.94 67.63 -21.5 67.63 0C67.63 21.5 58.27 41.94 42 56',
      },
    ],
  },
  {
    id: 'transmitter-pocket',
    lengthMm: 110,
    widthMm: 70,
    box: [-55, -35, 55, 35],
    words: 'transmitter radio small battery',
    paths: [
      {
        line: 'outline',
        d: 'M-25 -35L25 -35C41.57 -35 55 -21.57 55 -5L55 5C55 21.57 41.57 35 25 35L-25 35C-41.57 35 -55 21.57 -55 5L-55 -5C-55 -21.57 -41.57 -35 -25 -35Z',
      },
      {
        line: 'solid',
        d: 'M-13 0C-13 6.63 -18.37 12 -25 12C-31.63 12 -37 6.63 -37 0C-37 -6.63 -31.63 -12 -25 -12C-18.37 -12 -13 -6.63 -13 0Z',
      },
      { line: 'detail', d: 'M-5 -18C4.65 -7.94 4.65 7.94 -5 18M12 -26C24.8 -11.03 24.8 11.03 12 26' },
    ],
  },
  {
    id: 'transmitter-panel',
    lengthMm: 120,
    widthMm: 250,
    box: [-60, -125, 60, 125],
    words: 'transmitter radio outdoors panel aerial directional',
    paths: [
      { line: 'outline', d: 'M-60 -50L0 -125L60 -125L60 125L0 125L-60 50Z' },
      {
        line: 'solid',
        d: 'M2 0C2 12.15 -7.85 22 -20 22C-32.15 22 -42 12.15 -42 0C-42 -12.15 -32.15 -22 -20 -22C-7.85 -22 2 -12.15 2 0Z',
      },
      { line: 'detail', d: 'M12 -55C30.67 -18.33 30.67 18.33 12 55M32 -95C57.33 -31.67 57.33 31.67 32 95' },
    ],
  },
  {
    id: 'access-point',
    lengthMm: 200,
    widthMm: 200,
    box: [-100, -100, 100, 100],
    words: 'access point wireless network',
    paths: [
      {
        line: 'outline',
        d: 'M100 0C100 55.23 55.23 100 0 100C-55.23 100 -100 55.23 -100 0C-100 -55.23 -55.23 -100 0 -100C55.23 -100 100 -55.23 100 0Z',
      },
      {
        line: 'solid',
        d: 'M24 40C24 53.25 13.25 64 0 64C-13.25 64 -24 53.25 -24 40C-24 26.75 -13.25 16 0 16C13.25 16 24 26.75 24 40Z',
      },
      {
        line: 'detail',
        d: 'M-35 10C-15.56 -9.06 15.56 -9.06 35 10M-65 -20C-48.02 -37.73 -24.54 -47.75 0 -47.75C24.54 -47.75 48.02 -37.73 65 -20',
      },
    ],
  },
  {
    id: 'receiver',
    lengthMm: 160,
    widthMm: 130,
    box: [-80, -65, 80, 65],
    words: 'receiver radio control aerial',
    paths: [
      {
        line: 'outline',
        d: 'M-72 -65L72 -65C76.42 -65 80 -61.42 80 -57L80 57C80 61.42 76.42 65 72 65L-72 65C-76.42 65 -80 61.42 -80 57L-80 -57C-80 -61.42 -76.42 -65 -72 -65Z',
      },
      { line: 'solid', d: 'M40 -65L80 -65L80 65L40 65Z' },
      {
        line: 'detail',
        d: 'M-8 -28C-16.46 -21.17 -21.37 -10.87 -21.37 0C-21.37 10.87 -16.46 21.17 -8 28M-25 -42C-37.69 -31.75 -45.06 -16.31 -45.06 0C-45.06 16.31 -37.69 31.75 -25 42M-42 -56C-58.27 -41.94 -67.63 -21.5 -67.63 0C-67.63 21.5 -58.27 41.94 -42 56',
      },
      { line: 'solid', d: 'M0 -16L24 0L0 16Z' },
    ],
  },
  {
    id: 'receiver-plug',
    lengthMm: 115,
    widthMm: 40,
    box: [-55, -20, 60, 20],
    words: 'receiver radio plug-in dongle',
    paths: [
      {
        line: 'outline',
        d: 'M-39 -20L4 -20C12.84 -20 20 -12.84 20 -4L20 4C20 12.84 12.84 20 4 20L-39 20C-47.84 20 -55 12.84 -55 4L-55 -4C-55 -12.84 -47.84 -20 -39 -20Z',
      },
      { line: 'outline', d: 'M20 -13L60 -13L60 13L20 13' },
      {
        line: 'detail',
        d: 'M-10 -12C-16.11 -5.17 -16.11 5.17 -10 12M-26 -13C-30.64 -4.96 -30.64 4.96 -26 13',
      },
      {
        line: 'solid',
        d: 'M9 0C9 2.76 6.76 5 4 5C1.24 5 -1 2.76 -1 0C-1 -2.76 1.24 -5 4 -5C6.76 -5 9 -2.76 9 0Z',
      },
    ],
  },
  {
    id: 'repeater',
    lengthMm: 180,
    widthMm: 140,
    box: [-90, -70, 90, 70],
    words: 'repeater radio takes and sends on',
    paths: [
      {
        line: 'outline',
        d: 'M-82 -70L82 -70C86.42 -70 90 -66.42 90 -62L90 62C90 66.42 86.42 70 82 70L-82 70C-86.42 70 -90 66.42 -90 62L-90 -62C-90 -66.42 -86.42 -70 -82 -70Z',
      },
      { line: 'solid', d: 'M-22 -32L30 0L-22 32Z' },
      {
        line: 'detail',
        d: 'M42 -30C57.75 -13.1 57.75 13.1 42 30M62 -48C87.4 -21.04 87.4 21.04 62 48M-42 -30C-57.75 -13.1 -57.75 13.1 -42 30M-62 -48C-87.4 -21.04 -87.4 21.04 -62 48',
      },
    ],
  },
  {
    id: 'desk',
    lengthMm: 400,
    widthMm: 600,
    box: [-200, -300, 200, 300],
    words: 'desk lighting console faders',
    paths: [
      { line: 'outline', d: 'M-200 -300L120 -300L200 -240L200 240L120 300L-200 300Z' },
      {
        line: 'detail',
        d: 'M-150 -200L10 -200M-150 -100L10 -100M-150 0L10 0M-150 100L10 100M-150 200L10 200',
      },
      {
        line: 'solid',
        d: 'M-130 -220L-100 -220L-100 -180L-130 -180ZM-105 -120L-75 -120L-75 -80L-105 -80ZM-80 -20L-50 -20L-50 20L-80 20ZM-55 80L-25 80L-25 120L-55 120ZM-30 180L0 180L0 220L-30 220Z',
      },
      { line: 'detail', d: 'M80 -300L80 300' },
    ],
  },
  {
    id: 'desk-small',
    lengthMm: 280,
    widthMm: 450,
    box: [-140, -225, 140, 225],
    words: 'desk lighting small faders',
    paths: [
      {
        line: 'outline',
        d: 'M-124 -225L124 -225C132.84 -225 140 -217.84 140 -209L140 209C140 217.84 132.84 225 124 225L-124 225C-132.84 225 -140 217.84 -140 209L-140 -209C-140 -217.84 -132.84 -225 -124 -225Z',
      },
      { line: 'detail', d: 'M-90 -130L90 -130M-90 0L90 0M-90 130L90 130' },
      {
        line: 'solid',
        d: 'M-20 -160L20 -160L20 -100L-20 -100ZM30 -30L70 -30L70 30L30 30ZM-60 100L-20 100L-20 160L-60 160Z',
      },
    ],
  },
  {
    id: 'computer',
    lengthMm: 250,
    widthMm: 350,
    box: [-125, -175, 125, 175],
    words: 'computer laptop as a desk',
    paths: [
      {
        line: 'outline',
        d: 'M-117 -175L-3 -175C1.42 -175 5 -171.42 5 -167L5 167C5 171.42 1.42 175 -3 175L-117 175C-121.42 175 -125 171.42 -125 167L-125 -167C-125 -171.42 -121.42 -175 -117 -175Z',
      },
      { line: 'outline', d: 'M5 -175L125 -175L125 175L5 175Z' },
      { line: 'detail', d: 'M-95 -130L-95 130M-60 -130L-60 130' },
      { line: 'solid', d: 'M25 -150L105 -150L105 150L25 150Z' },
    ],
  },
  {
    id: 'tablet',
    lengthMm: 180,
    widthMm: 250,
    box: [-90, -125, 90, 125],
    words: 'tablet as a desk',
    paths: [
      {
        line: 'outline',
        d: 'M-70 -125L70 -125C81.05 -125 90 -116.05 90 -105L90 105C90 116.05 81.05 125 70 125L-70 125C-81.05 125 -90 116.05 -90 105L-90 -105C-90 -116.05 -81.05 -125 -70 -125Z',
      },
      { line: 'detail', d: 'M-65 -95L65 -95L65 95L-65 95Z' },
      {
        line: 'solid',
        d: 'M8 110C8 114.42 4.42 118 0 118C-4.42 118 -8 114.42 -8 110C-8 105.58 -4.42 102 0 102C4.42 102 8 105.58 8 110Z',
      },
      { line: 'detail', d: 'M-30 -60L-30 60M10 -60L10 60' },
      { line: 'solid', d: 'M-45 10L-15 10L-15 34L-45 34ZM-5 -40L25 -40L25 -16L-5 -16Z' },
    ],
  },
  {
    id: 'node',
    lengthMm: 220,
    widthMm: 180,
    box: [-130, -90, 90, 90],
    words: 'node network to lines gateway',
    paths: [
      {
        line: 'outline',
        d: 'M-82 -90L82 -90C86.42 -90 90 -86.42 90 -82L90 82C90 86.42 86.42 90 82 90L-82 90C-86.42 90 -90 86.42 -90 82L-90 -82C-90 -86.42 -86.42 -90 -82 -90Z',
      },
      { line: 'outline', d: 'M-90 -30L-130 -30L-130 30L-90 30' },
      { line: 'detail', d: 'M-55 0L0 0M0 -50L0 50M0 -50L50 -50M0 0L50 0M0 50L50 50' },
      {
        line: 'solid',
        d: 'M64 -50C64 -42.27 57.73 -36 50 -36C42.27 -36 36 -42.27 36 -50C36 -57.73 42.27 -64 50 -64C57.73 -64 64 -57.73 64 -50ZM64 0C64 7.73 57.73 14 50 14C42.27 14 36 7.73 36 0C36 -7.73 42.27 -14 50 -14C57.73 -14 64 -7.73 64 0ZM64 50C64 57.73 57.73 64 50 64C42.27 64 36 57.73 36 50C36 42.27 42.27 36 50 36C57.73 36 64 42.27 64 50Z',
      },
    ],
  },
  {
    id: 'node-rack',
    lengthMm: 220,
    widthMm: 480,
    box: [-110, -240, 110, 240],
    words: 'node network many lines rack pixel driver',
    paths: [
      { line: 'outline', d: 'M-110 -240L110 -240L110 240L-110 240Z' },
      { line: 'detail', d: 'M-110 -185L110 -185M-110 185L110 185' },
      {
        line: 'outline',
        d: 'M92 -110C92 -86.8 73.2 -68 50 -68C26.8 -68 8 -86.8 8 -110C8 -133.2 26.8 -152 50 -152C73.2 -152 92 -133.2 92 -110Z',
      },
      {
        line: 'outline',
        d: 'M92 0C92 23.2 73.2 42 50 42C26.8 42 8 23.2 8 0C8 -23.2 26.8 -42 50 -42C73.2 -42 92 -23.2 92 0Z',
      },
      {
        line: 'outline',
        d: 'M92 110C92 133.2 73.2 152 50 152C26.8 152 8 133.2 8 110C8 86.8 26.8 68 50 68C73.2 68 92 86.8 92 110Z',
      },
      { line: 'solid', d: 'M-90 -45L-30 -45L-30 45L-90 45Z' },
    ],
  },
  {
    id: 'switch',
    lengthMm: 120,
    widthMm: 400,
    box: [-60, -200, 60, 200],
    words: 'switch network ports',
    paths: [
      {
        line: 'outline',
        d: 'M-54 -200L54 -200C57.31 -200 60 -197.31 60 -194L60 194C60 197.31 57.31 200 54 200L-54 200C-57.31 200 -60 197.31 -60 194L-60 -194C-60 -197.31 -57.31 -200 -54 -200Z',
      },
      {
        line: 'detail',
        d: 'M-10 -175L40 -175L40 -125L-10 -125ZM-10 -100L40 -100L40 -50L-10 -50ZM-10 -25L40 -25L40 25L-10 25ZM-10 50L40 50L40 100L-10 100ZM-10 125L40 125L40 175L-10 175ZM-35 -170L-35 170',
      },
    ],
  },
  {
    id: 'merger',
    lengthMm: 195,
    widthMm: 180,
    box: [-120, -90, 75, 90],
    words: 'merger two lines into one',
    paths: [
      {
        line: 'outline',
        d: 'M-67 -90L67 -90C71.42 -90 75 -86.42 75 -82L75 82C75 86.42 71.42 90 67 90L-67 90C-71.42 90 -75 86.42 -75 82L-75 -82C-75 -86.42 -71.42 -90 -67 -90Z',
      },
      { line: 'detail', d: 'M-75 -50L-10 0M-75 50L-10 0M-10 0L75 0M-120 -50L-75 -50M-120 50L-75 50' },
      { line: 'solid', d: 'M20 -25L60 0L20 25Z' },
    ],
  },
  {
    id: 'data-splitter',
    lengthMm: 150,
    widthMm: 230,
    box: [-75, -115, 75, 115],
    words: 'splitter data isolated lines',
    paths: [
      {
        line: 'outline',
        d: 'M-67 -115L67 -115C71.42 -115 75 -111.42 75 -107L75 107C75 111.42 71.42 115 67 115L-67 115C-71.42 115 -75 111.42 -75 107L-75 -107C-75 -111.42 -71.42 -115 -67 -115Z',
      },
      {
        line: 'detail',
        d: 'M-75 0L-20 0M-20 -80L-20 80M-20 -80L40 -80M-20 -27L40 -27M-20 27L40 27M-20 80L40 80',
      },
      {
        line: 'solid',
        d: 'M40 -96L72 -80L40 -64ZM40 -43L72 -27L40 -11ZM40 11L72 27L40 43ZM40 64L72 80L40 96Z',
      },
    ],
  },
  {
    id: 'data-splitter-rack',
    lengthMm: 200,
    widthMm: 480,
    box: [-100, -240, 100, 240],
    words: 'splitter data many lines rack',
    paths: [
      { line: 'outline', d: 'M-100 -240L100 -240L100 240L-100 240Z' },
      { line: 'detail', d: 'M-100 0L-40 0M-40 -160L-40 160M-40 -160L20 -160M-40 0L20 0M-40 160L20 160' },
      { line: 'solid', d: 'M20 -208L95 -160L20 -112ZM20 -48L95 0L20 48ZM20 112L95 160L20 208Z' },
    ],
  },
  {
    id: 'data-adapter',
    lengthMm: 240,
    widthMm: 100,
    box: [-120, -50, 120, 50],
    words: 'data adapter five-pin three-pin',
    paths: [
      {
        line: 'outline',
        d: 'M-20 0C-20 27.61 -42.39 50 -70 50C-97.61 50 -120 27.61 -120 0C-120 -27.61 -97.61 -50 -70 -50C-42.39 -50 -20 -27.61 -20 0Z',
      },
      {
        line: 'outline',
        d: 'M120 0C120 27.61 97.61 50 70 50C42.39 50 20 27.61 20 0C20 -27.61 42.39 -50 70 -50C97.61 -50 120 -27.61 120 0Z',
      },
      { line: 'detail', d: 'M-20 0L20 0' },
      {
        line: 'solid',
        d: 'M-83 -18C-83 -13.03 -87.03 -9 -92 -9C-96.97 -9 -101 -13.03 -101 -18C-101 -22.97 -96.97 -27 -92 -27C-87.03 -27 -83 -22.97 -83 -18ZM-83 18C-83 22.97 -87.03 27 -92 27C-96.97 27 -101 22.97 -101 18C-101 13.03 -96.97 9 -92 9C-87.03 9 -83 13.03 -83 18ZM-39 -22C-39 -17.03 -43.03 -13 -48 -13C-52.97 -13 -57 -17.03 -57 -22C-57 -26.97 -52.97 -31 -48 -31C-43.03 -31 -39 -26.97 -39 -22ZM-39 22C-39 26.97 -43.03 31 -48 31C-52.97 31 -57 26.97 -57 22C-57 17.03 -52.97 13 -48 13C-43.03 13 -39 17.03 -39 22ZM-61 0C-61 4.97 -65.03 9 -70 9C-74.97 9 -79 4.97 -79 0C-79 -4.97 -74.97 -9 -70 -9C-65.03 -9 -61 -4.97 -61 0ZM64 -20C64 -15.03 59.97 -11 55 -11C50.03 -11 46 -15.03 46 -20C46 -24.97 50.03 -29 55 -29C59.97 -29 64 -24.97 64 -20ZM64 20C64 24.97 59.97 29 55 29C50.03 29 46 24.97 46 20C46 15.03 50.03 11 55 11C59.97 11 64 15.03 64 20ZM101 0C101 4.97 96.97 9 92 9C87.03 9 83 4.97 83 0C83 -4.97 87.03 -9 92 -9C96.97 -9 101 -4.97 101 0Z',
      },
    ],
  },
  {
    id: 'terminator',
    lengthMm: 165,
    widthMm: 90,
    box: [-65, -45, 100, 45],
    words: 'terminator data end resistor',
    paths: [
      {
        line: 'outline',
        d: 'M25 0C25 24.85 4.85 45 -20 45C-44.85 45 -65 24.85 -65 0C-65 -24.85 -44.85 -45 -20 -45C4.85 -45 25 -24.85 25 0Z',
      },
      { line: 'detail', d: 'M25 0L40 0L48 -22L62 22L76 -22L84 0L100 0M100 -35L100 35' },
      {
        line: 'solid',
        d: 'M-6 0C-6 7.73 -12.27 14 -20 14C-27.73 14 -34 7.73 -34 0C-34 -7.73 -27.73 -14 -20 -14C-12.27 -14 -6 -7.73 -6 0Z',
      },
    ],
  },
  {
    id: 'camera-tripod',
    lengthMm: 680,
    widthMm: 660,
    box: [-350, -330, 330, 330],
    words: 'camera on tripod legs lens',
    paths: [
      { line: 'detail', d: 'M0 0L-350 -330M0 0L-350 330M0 0L330 0' },
      { line: 'outline', d: 'M-150 -110L80 -110L80 110L-150 110Z' },
      { line: 'outline', d: 'M80 -60L200 -60L290 -120L290 120L200 60L80 60' },
      {
        line: 'solid',
        d: 'M0 0C0 22.09 -17.91 40 -40 40C-62.09 40 -80 22.09 -80 0C-80 -22.09 -62.09 -40 -40 -40C-17.91 -40 0 -22.09 0 0Z',
      },
    ],
  },
  {
    id: 'camera-handheld',
    lengthMm: 470,
    widthMm: 340,
    box: [-280, -90, 190, 250],
    words: 'camera handheld shoulder operator',
    paths: [
      {
        line: 'outline',
        d: 'M-20 120C-20 191.8 -78.2 250 -150 250C-221.8 250 -280 191.8 -280 120C-280 48.2 -221.8 -10 -150 -10C-78.2 -10 -20 48.2 -20 120Z',
      },
      { line: 'detail', d: 'M-150 -10C-90 -43.33 -43.33 -50 -10 -30M-20 120C46.67 106.67 73.33 76.67 60 30' },
      { line: 'outline', d: 'M-60 -90L80 -90L80 30L-60 30Z' },
      { line: 'outline', d: 'M80 -65L190 -85L190 25L80 5' },
    ],
  },
  {
    id: 'camera-dolly',
    lengthMm: 1500,
    widthMm: 700,
    box: [-800, -350, 700, 350],
    words: 'camera on dolly wheels track',
    paths: [
      {
        line: 'outline',
        d: 'M-660 -310L460 -310C482.09 -310 500 -292.09 500 -270L500 270C500 292.09 482.09 310 460 310L-660 310C-682.09 310 -700 292.09 -700 270L-700 -270C-700 -292.09 -682.09 -310 -660 -310Z',
      },
      { line: 'detail', d: 'M-800 -350L700 -350M-800 350L700 350' },
      {
        line: 'solid',
        d: 'M-560 -350L-400 -350L-400 -280L-560 -280ZM240 -350L400 -350L400 -280L240 -280ZM-560 280L-400 280L-400 350L-560 350ZM240 280L400 280L400 350L240 350Z',
      },
      { line: 'outline', d: 'M-250 -130L150 -130L150 130L-250 130Z' },
      { line: 'outline', d: 'M150 -80L340 -80L420 -150L420 150L340 80L150 80' },
    ],
  },
  {
    id: 'camera-crane',
    lengthMm: 4150,
    widthMm: 1600,
    box: [-2100, -800, 2050, 800],
    words: 'camera crane jib arm head',
    paths: [
      { line: 'outline', d: 'M-1500 -800L-400 -800L-400 800L-1500 800Z' },
      { line: 'detail', d: 'M-1500 -800L-400 800M-1500 800L-400 -800' },
      { line: 'outline', d: 'M-2000 -90L1500 -90L1500 90L-2000 90Z' },
      { line: 'solid', d: 'M-2100 -350L-1750 -350L-1750 350L-2100 350Z' },
      { line: 'outline', d: 'M1400 -350L1800 -350L1800 350L1400 350Z' },
      { line: 'outline', d: 'M1800 -180L2050 -320L2050 320L1800 180' },
    ],
  },
  {
    id: 'monitor',
    lengthMm: 320,
    widthMm: 600,
    box: [-260, -300, 60, 300],
    words: 'monitor on a stand video',
    paths: [
      { line: 'outline', d: 'M-40 -260L0 -300L60 -300L60 300L0 300L-40 260Z' },
      { line: 'detail', d: 'M30 -300L30 300' },
      { line: 'outline', d: 'M-40 -60L-120 -60L-120 60L-40 60' },
      { line: 'detail', d: 'M-120 0L-260 -180M-120 0L-260 180' },
    ],
  },
  {
    id: 'armchair',
    lengthMm: 850,
    widthMm: 850,
    box: [-425, -425, 425, 425],
    words: 'armchair easy chair',
    paths: [
      {
        line: 'outline',
        d: 'M-335 -425L335 -425C384.71 -425 425 -384.71 425 -335L425 335C425 384.71 384.71 425 335 425L-335 425C-384.71 425 -425 384.71 -425 335L-425 -335C-425 -384.71 -384.71 -425 -335 -425Z',
      },
      {
        line: 'detail',
        d: 'M-200 -260L425 -260M-200 260L425 260M-200 -260L-200 260M-180 -240L380 -240L380 240L-180 240Z',
      },
    ],
  },
  {
    id: 'sofa-two',
    lengthMm: 850,
    widthMm: 1500,
    box: [-425, -750, 425, 750],
    words: 'sofa two seats couch',
    paths: [
      { line: 'outline', d: 'M-425 -750L425 -750L425 -560L-200 -560L-200 560L425 560L425 750L-425 750Z' },
      {
        line: 'outline',
        d: 'M-140 -560L340 -560C373.14 -560 400 -533.14 400 -500L400 -60C400 -26.86 373.14 0 340 0L-140 0C-173.14 0 -200 -26.86 -200 -60L-200 -500C-200 -533.14 -173.14 -560 -140 -560Z',
      },
      {
        line: 'outline',
        d: 'M-140 0L340 0C373.14 0 400 26.86 400 60L400 500C400 533.14 373.14 560 340 560L-140 560C-173.14 560 -200 533.14 -200 500L-200 60C-200 26.86 -173.14 0 -140 0Z',
      },
    ],
  },
  {
    id: 'table-round',
    lengthMm: 1560,
    widthMm: 1100,
    box: [-780, -550, 780, 550],
    words: 'table round',
    paths: [
      {
        line: 'outline',
        d: 'M550 0C550 303.76 303.76 550 0 550C-303.76 550 -550 303.76 -550 0C-550 -303.76 -303.76 -550 0 -550C303.76 -550 550 -303.76 550 0Z',
      },
      { line: 'detail', d: 'M-300 0L300 0' },
      {
        line: 'outline',
        d: 'M780 0C780 71.8 721.8 130 650 130C578.2 130 520 71.8 520 0C520 -71.8 578.2 -130 650 -130C721.8 -130 780 -71.8 780 0Z',
      },
      {
        line: 'outline',
        d: 'M-520 0C-520 71.8 -578.2 130 -650 130C-721.8 130 -780 71.8 -780 0C-780 -71.8 -721.8 -130 -650 -130C-578.2 -130 -520 -71.8 -520 0Z',
      },
    ],
  },
  {
    id: 'desk-writing',
    lengthMm: 830,
    widthMm: 1400,
    box: [-480, -700, 350, 700],
    words: 'desk writing drawers office',
    paths: [
      { line: 'outline', d: 'M-350 -160L-480 -160L-480 260L-350 260' },
      { line: 'outline', d: 'M-350 -700L350 -700L350 700L-350 700Z' },
      { line: 'detail', d: 'M-220 -130L30 -130L30 230L-220 230ZM-350 -420L350 -420M-350 480L350 480' },
      {
        line: 'solid',
        d: 'M270 -560C270 -521.34 238.66 -490 200 -490C161.34 -490 130 -521.34 130 -560C130 -598.66 161.34 -630 200 -630C238.66 -630 270 -598.66 270 -560Z',
      },
    ],
  },
  {
    id: 'counter',
    lengthMm: 600,
    widthMm: 2400,
    box: [-300, -1200, 300, 1200],
    words: 'counter kitchen bar worktop sink',
    paths: [
      { line: 'outline', d: 'M-300 -1200L300 -1200L300 1200L-300 1200Z' },
      { line: 'detail', d: 'M-190 -800L190 -800L190 -180L-190 -180ZM-80 -490L80 -490M-300 100L300 100' },
      {
        line: 'outline',
        d: 'M40 420C40 491.8 -18.2 550 -90 550C-161.8 550 -220 491.8 -220 420C-220 348.2 -161.8 290 -90 290C-18.2 290 40 348.2 40 420Z',
      },
      {
        line: 'outline',
        d: 'M40 850C40 921.8 -18.2 980 -90 980C-161.8 980 -220 921.8 -220 850C-220 778.2 -161.8 720 -90 720C-18.2 720 40 778.2 40 850Z',
      },
    ],
  },
  {
    id: 'bed',
    lengthMm: 2000,
    widthMm: 1600,
    box: [-1000, -800, 1000, 800],
    words: 'bed double pillows',
    paths: [
      {
        line: 'outline',
        d: 'M-940 -800L940 -800C973.14 -800 1000 -773.14 1000 -740L1000 740C1000 773.14 973.14 800 940 800L-940 800C-973.14 800 -1000 773.14 -1000 740L-1000 -740C-1000 -773.14 -973.14 -800 -940 -800Z',
      },
      {
        line: 'detail',
        d: 'M-930 -700L-510 -700L-510 -80L-930 -80ZM-930 80L-510 80L-510 700L-930 700ZM-350 -800L-350 800M-350 -500L-150 -800',
      },
    ],
  },
  {
    id: 'bed-single',
    lengthMm: 2000,
    widthMm: 900,
    box: [-1000, -450, 1000, 450],
    words: 'bed single pillow',
    paths: [
      {
        line: 'outline',
        d: 'M-940 -450L940 -450C973.14 -450 1000 -423.14 1000 -390L1000 390C1000 423.14 973.14 450 940 450L-940 450C-973.14 450 -1000 423.14 -1000 390L-1000 -390C-1000 -423.14 -973.14 -450 -940 -450Z',
      },
      { line: 'detail', d: 'M-930 -320L-550 -320L-550 320L-930 320ZM-400 -450L-400 450M-400 150L-150 450' },
    ],
  },
  {
    id: 'cabinet',
    lengthMm: 860,
    widthMm: 1200,
    box: [-300, -600, 560, 600],
    words: 'cabinet wardrobe cupboard doors',
    paths: [
      { line: 'outline', d: 'M-300 -600L300 -600L300 600L-300 600Z' },
      {
        line: 'detail',
        d: 'M230 -600L230 600M230 0L-300 0M300 -600C473.33 -573.33 560 -393.33 560 -60M300 600C473.33 573.33 560 393.33 560 60M300 -600L560 -600M300 600L560 600',
      },
    ],
  },
  {
    id: 'shelf',
    lengthMm: 300,
    widthMm: 900,
    box: [-150, -450, 150, 450],
    words: 'shelf bookcase books',
    paths: [
      { line: 'outline', d: 'M-150 -450L150 -450L150 450L-150 450Z' },
      {
        line: 'detail',
        d: 'M-150 -300L80 -300M-150 -220L80 -220M-150 -120L60 -90M-150 60L80 60M-150 140L80 140M-150 220L80 220M-150 330L60 300M100 -450L100 450',
      },
    ],
  },
  {
    id: 'piano',
    lengthMm: 1655,
    widthMm: 1500,
    box: [-700, -750, 955.47, 750],
    words: 'piano grand',
    paths: [
      {
        line: 'outline',
        d: 'M-700 -750L600 -750C866.67 -716.67 983.33 -583.33 950 -350C916.67 -183.33 766.67 -83.33 500 -50C333.33 -16.67 250 100 250 300C250 600 116.67 750 -150 750L-700 750Z',
      },
      {
        line: 'detail',
        d: 'M-480 -750L-480 750M-700 -500L-480 -500M-700 -250L-480 -250M-700 0L-480 0M-700 250L-480 250M-700 500L-480 500',
      },
    ],
  },
  {
    id: 'bath',
    lengthMm: 1700,
    widthMm: 750,
    box: [-850, -375, 850, 375],
    words: 'bath tub',
    paths: [
      {
        line: 'outline',
        d: 'M-790 -375L790 -375C823.14 -375 850 -348.14 850 -315L850 315C850 348.14 823.14 375 790 375L-790 375C-823.14 375 -850 348.14 -850 315L-850 -315C-850 -348.14 -823.14 -375 -790 -375Z',
      },
      {
        line: 'detail',
        d: 'M-760 -290L760 -290L760 290L-760 290ZM700 0C700 127.03 413.46 230 60 230C-293.46 230 -580 127.03 -580 0C-580 -127.03 -293.46 -230 60 -230C413.46 -230 700 -127.03 700 0Z',
      },
      {
        line: 'solid',
        d: 'M-510 0C-510 27.61 -532.39 50 -560 50C-587.61 50 -610 27.61 -610 0C-610 -27.61 -587.61 -50 -560 -50C-532.39 -50 -510 -27.61 -510 0Z',
      },
    ],
  },
  {
    id: 'plant',
    lengthMm: 579,
    widthMm: 609,
    box: [-258.9, -304.3, 320, 304.3],
    words: 'plant pot leaves',
    paths: [
      { line: 'outline', d: 'M0 0C121.6 82 228.27 82 320 0C228.27 -82 121.6 -82 0 0Z' },
      { line: 'outline', d: 'M0 0C-40.4 141 -7.43 242.43 98.9 304.3C148.57 191.7 115.6 90.27 0 0Z' },
      { line: 'outline', d: 'M0 0C-146.6 5.13 -232.9 67.83 -258.9 188.1C-136.43 200.5 -50.13 137.8 0 0Z' },
      {
        line: 'outline',
        d: 'M0 0C-50.13 -137.8 -136.43 -200.5 -258.9 -188.1C-232.9 -67.83 -146.6 -5.13 0 0Z',
      },
      { line: 'outline', d: 'M0 0C115.6 -90.27 148.57 -191.7 98.9 -304.3C-7.43 -242.43 -40.4 -141 0 0Z' },
      {
        line: 'solid',
        d: 'M60 0C60 33.14 33.14 60 0 60C-33.14 60 -60 33.14 -60 0C-60 -33.14 -33.14 -60 0 -60C33.14 -60 60 -33.14 60 0Z',
      },
    ],
  },
  {
    id: 'tree',
    lengthMm: 2632,
    widthMm: 2744,
    box: [-1315.99, -1371.85, 1315.99, 1371.85],
    words: 'tree crown trunk',
    paths: [
      {
        line: 'outline',
        d: 'M1150 0C1429.47 339.93 1356.27 565.27 930.4 676C956.67 1115.27 765 1254.5 355.4 1093.7C118.47 1464.57 -118.47 1464.57 -355.4 1093.7C-765 1254.5 -956.67 1115.27 -930.4 676C-1356.27 565.27 -1429.47 339.93 -1150 0C-1429.47 -339.93 -1356.27 -565.27 -930.4 -676C-956.67 -1115.27 -765 -1254.5 -355.4 -1093.7C-118.47 -1464.57 118.47 -1464.57 355.4 -1093.7C765 -1254.5 956.67 -1115.27 930.4 -676C1356.27 -565.27 1429.47 -339.93 1150 0Z',
      },
      {
        line: 'solid',
        d: 'M180 0C180 99.41 99.41 180 0 180C-99.41 180 -180 99.41 -180 0C-180 -99.41 -99.41 -180 0 -180C99.41 -180 180 -99.41 180 0Z',
      },
      { line: 'detail', d: 'M234.9 85.5L751.8 273.6M-191.5 160.7L-612.8 514.2M-43.4 -246.2L-138.9 -787.8' },
    ],
  },
  {
    id: 'bench',
    lengthMm: 550,
    widthMm: 1500,
    box: [-300, -750, 250, 750],
    words: 'bench seat park slats',
    paths: [
      { line: 'outline', d: 'M-60 -750L70 -750L70 750L-60 750Z' },
      { line: 'outline', d: 'M120 -750L250 -750L250 750L120 750Z' },
      { line: 'solid', d: 'M-300 -600L250 -600L250 -510L-300 -510ZM-300 510L250 510L250 600L-300 600Z' },
    ],
  },
  {
    id: 'stool',
    lengthMm: 380,
    widthMm: 380,
    box: [-190, -190, 190, 190],
    words: 'stool round bar',
    paths: [
      {
        line: 'outline',
        d: 'M190 0C190 104.93 104.93 190 0 190C-104.93 190 -190 104.93 -190 0C-190 -104.93 -104.93 -190 0 -190C104.93 -190 190 -104.93 190 0Z',
      },
      {
        line: 'detail',
        d: 'M110 0C110 60.75 60.75 110 0 110C-60.75 110 -110 60.75 -110 0C-110 -60.75 -60.75 -110 0 -110C60.75 -110 110 -60.75 110 0Z',
      },
    ],
  },
  {
    id: 'rug',
    lengthMm: 2180,
    widthMm: 1400,
    box: [-1090, -700, 1090, 700],
    words: 'rug carpet fringe',
    paths: [
      { line: 'outline', d: 'M-1000 -700L1000 -700L1000 700L-1000 700Z' },
      {
        line: 'detail',
        d: 'M-850 -550L850 -550L850 550L-850 550ZM-1000 -600L-1090 -600M1000 -600L1090 -600M-1000 -400L-1090 -400M1000 -400L1090 -400M-1000 -200L-1090 -200M1000 -200L1090 -200M-1000 0L-1090 0M1000 0L1090 0M-1000 200L-1090 200M1000 200L1090 200M-1000 400L-1090 400M1000 400L1090 400M-1000 600L-1090 600M1000 600L1090 600M-300 0L0 -250L300 0L0 250Z',
      },
    ],
  },
  {
    id: 'van',
    lengthMm: 5300,
    widthMm: 2000,
    box: [-2650, -1000, 2650, 1000],
    words: 'van vehicle delivery',
    paths: [
      {
        line: 'outline',
        d: 'M-2650 -1000L1500 -1000C2266.67 -933.33 2650 -766.67 2650 -500L2650 500C2650 766.67 2266.67 933.33 1500 1000L-2650 1000Z',
      },
      {
        line: 'detail',
        d: 'M1050 -980L1050 980M1550 -800L1550 800M1050 -980L1550 -800M1050 980L1550 800M-2650 0L-2200 0',
      },
    ],
  },
  {
    id: 'truck',
    lengthMm: 7500,
    widthMm: 2500,
    box: [-3750, -1250, 3750, 1250],
    words: 'truck lorry vehicle box body cab',
    paths: [
      { line: 'outline', d: 'M-3750 -1250L1650 -1250L1650 1250L-3750 1250Z' },
      {
        line: 'outline',
        d: 'M2200 -1150L3400 -1150C3593.3 -1150 3750 -993.3 3750 -800L3750 800C3750 993.3 3593.3 1150 3400 1150L2200 1150C2006.7 1150 1850 993.3 1850 800L1850 -800C1850 -993.3 2006.7 -1150 2200 -1150Z',
      },
      {
        line: 'detail',
        d: 'M1650 -300L1850 -300M1650 300L1850 300M2900 -1150L2900 1150M-3750 -1250L1650 1250M-3750 1250L1650 -1250',
      },
    ],
  },
  {
    id: 'bus',
    lengthMm: 11000,
    widthMm: 2500,
    box: [-5500, -1250, 5500, 1250],
    words: 'bus coach vehicle',
    paths: [
      {
        line: 'outline',
        d: 'M-5100 -1250L5100 -1250C5320.91 -1250 5500 -1070.91 5500 -850L5500 850C5500 1070.91 5320.91 1250 5100 1250L-5100 1250C-5320.91 1250 -5500 1070.91 -5500 850L-5500 -850C-5500 -1070.91 -5320.91 -1250 -5100 -1250Z',
      },
      {
        line: 'detail',
        d: 'M4500 -1250L4500 1250M-4500 -1250L-4500 1250M-3300 -850L-2300 -850L-2300 850L-3300 850ZM-1500 -850L-500 -850L-500 850L-1500 850ZM300 -850L1300 -850L1300 850L300 850ZM2100 -850L3100 -850L3100 850L2100 850Z',
      },
      { line: 'solid', d: 'M3300 -1250L4100 -1250L4100 -950L3300 -950Z' },
    ],
  },
  {
    id: 'motorcycle',
    lengthMm: 2160,
    widthMm: 760,
    box: [-1080, -380, 1080, 380],
    words: 'motorcycle bicycle two wheels',
    paths: [
      {
        line: 'outline',
        d: 'M-420 0C-420 60.75 -567.75 110 -750 110C-932.25 110 -1080 60.75 -1080 0C-1080 -60.75 -932.25 -110 -750 -110C-567.75 -110 -420 -60.75 -420 0Z',
      },
      {
        line: 'outline',
        d: 'M1080 0C1080 60.75 932.25 110 750 110C567.75 110 420 60.75 420 0C420 -60.75 567.75 -110 750 -110C932.25 -110 1080 -60.75 1080 0Z',
      },
      {
        line: 'outline',
        d: 'M480 0C480 104.93 265.1 190 0 190C-265.1 190 -480 104.93 -480 0C-480 -104.93 -265.1 -190 0 -190C265.1 -190 480 -104.93 480 0Z',
      },
      { line: 'detail', d: 'M430 -380L520 -150L520 150L430 380M520 0L600 0' },
    ],
  },
  {
    id: 'trailer',
    lengthMm: 5360,
    widthMm: 2300,
    box: [-2500, -1150, 2860, 1150],
    words: 'trailer caravan tow hitch',
    paths: [
      {
        line: 'outline',
        d: 'M-2300 -1150L1500 -1150C1610.46 -1150 1700 -1060.46 1700 -950L1700 950C1700 1060.46 1610.46 1150 1500 1150L-2300 1150C-2410.46 1150 -2500 1060.46 -2500 950L-2500 -950C-2500 -1060.46 -2410.46 -1150 -2300 -1150Z',
      },
      { line: 'outline', d: 'M1700 -700L2700 0L1700 700' },
      {
        line: 'solid',
        d: 'M2860 0C2860 88.37 2788.37 160 2700 160C2611.63 160 2540 88.37 2540 0C2540 -88.37 2611.63 -160 2700 -160C2788.37 -160 2860 -88.37 2860 0Z',
      },
      {
        line: 'detail',
        d: 'M-2500 -400L-1900 -400L-1900 400L-2500 400M-1300 -700L600 -700L600 700L-1300 700Z',
      },
    ],
  },
];
