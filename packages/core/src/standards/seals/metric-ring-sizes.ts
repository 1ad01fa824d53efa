/** Metric O-ring sizes: preferred diameters of ISO 3601-1:1988 and the JIS B 2401 series, all from memory. */

/** Preferred inside diameters of the general series [mm] [mem-gbt3452.1]. */
export const isoInsideDiameters: readonly number[] = [
  1.8, 2, 2.24, 2.5, 2.8, 3.15, 3.55, 3.75, 4, 4.5, 4.75, 4.87, 5, 5.15, 5.3, 5.6, 6, 6.3, 6.7, 6.9, 7.1, 7.5, 8, 8.5,
  8.75, 9, 9.5, 9.75, 10, 10.6, 11.2, 11.6, 11.8, 12.1, 12.5, 12.8, 13.2, 14, 14.5, 15, 15.5, 16, 17, 18, 19, 20, 20.6,
  21.2, 22.4, 23, 23.6, 24.3, 25, 25.8, 26.5, 27.3, 28, 29, 30, 31.5, 32.5, 33.5, 34.5, 35.5, 36.5, 37.5, 38.7, 40,
  41.2, 42.5, 43.7, 45, 46.2, 47.5, 48.7, 50, 51.5, 53, 54.5, 56, 58, 60, 61.5, 63, 65, 67, 69, 71, 73, 75, 77.5, 80,
  82.5, 85, 87.5, 90, 92.5, 95, 97.5, 100, 103, 106, 109, 112, 115, 118, 122, 125, 128, 132, 136, 140, 145, 150, 155,
  160, 165, 170, 175, 180, 185, 190, 195, 200,
];

export interface IsoSection {
  /** Cross-section and its tolerance [mm] [mem-gbt3452.1]. */
  readonly section: number;
  readonly tolerance: number;
  /** Smallest and largest inside diameter it is made with [mm]; from memory, low confidence. */
  readonly from: number;
  readonly to: number;
}

/** Cross-sections of the general series before 2002. */
export const isoSections: readonly IsoSection[] = [
  { section: 1.8, tolerance: 0.08, from: 1.8, to: 50 },
  { section: 2.65, tolerance: 0.09, from: 10.6, to: 150 },
  { section: 3.55, tolerance: 0.1, from: 18, to: 200 },
  { section: 5.3, tolerance: 0.13, from: 40, to: 400 },
  { section: 7, tolerance: 0.15, from: 109, to: 670 },
];

/** Usual metric cords [mm], common practice. */
export const metricSections: readonly number[] = [1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 5.7, 6.0, 7.0, 8.0];

export interface JisSection {
  readonly series: 'P' | 'G';
  /** Cross-section and its tolerance [mm]. */
  readonly section: number;
  readonly tolerance: number;
  /** `number after the letter=inside diameter±tolerance` [mm]. */
  readonly sizes: string;
}

/** JIS B 2401: P moving or fixed, G fixed only [mem-jisb2401]. */
export const jis: readonly JisSection[] = [
  {
    series: 'P',
    section: 1.9,
    tolerance: 0.08,
    sizes: `3=2.8±0.14 4=3.8±0.14 5=4.8±0.15 6=5.8±0.15 7=6.8±0.16 8=7.8±0.16 9=8.8±0.17 10=9.8±0.17`,
  },
  {
    series: 'P',
    section: 2.4,
    tolerance: 0.09,
    sizes: `10A=9.8±0.17 11=10.8±0.18 11.2=11±0.18 12=11.8±0.19 12.5=12.3±0.19 14=13.8±0.19 15=14.8±0.2 16=15.8±0.2
      18=17.8±0.21 20=19.8±0.22 21=20.8±0.23 22=21.8±0.24`,
  },
  {
    series: 'P',
    section: 3.5,
    tolerance: 0.1,
    sizes: `22A=21.7±0.24 22.4=22.1±0.24 24=23.7±0.24 25=24.7±0.25 25.5=25.2±0.25 26=25.7±0.26 28=27.7±0.28 29=28.7±0.29
      29.5=29.2±0.29 30=29.7±0.29 31=30.7±0.3 31.5=31.2±0.31 32=31.7±0.31 34=33.7±0.33 35=34.7±0.34 35.5=35.2±0.34
      36=35.7±0.34 38=37.7±0.37 39=38.7±0.37 40=39.7±0.37 41=40.7±0.38 42=41.7±0.39 44=43.7±0.41 45=44.7±0.41
      46=45.7±0.42 48=47.7±0.44 49=48.7±0.45 50=49.7±0.45`,
  },
  {
    series: 'P',
    section: 5.7,
    tolerance: 0.13,
    sizes: `48A=47.6±0.44 50A=49.6±0.45 52=51.6±0.47 53=52.6±0.48 55=54.6±0.49 56=55.6±0.5 58=57.6±0.52 60=59.6±0.53
      62=61.6±0.55 63=62.6±0.56 65=64.6±0.57 67=66.6±0.59 70=69.6±0.61 71=70.6±0.62 75=74.6±0.65 80=79.6±0.69
      85=84.6±0.73 90=89.6±0.77 95=94.6±0.81 100=99.6±0.84`,
  },
  {
    series: 'G',
    section: 3.1,
    tolerance: 0.1,
    sizes: `25=24.4±0.25 30=29.4±0.29 35=34.4±0.33 40=39.4±0.37 45=44.4±0.41 50=49.4±0.45 55=54.4±0.49 60=59.4±0.53
      65=64.4±0.57 70=69.4±0.61 75=74.4±0.65 80=79.4±0.69 85=84.4±0.73 90=89.4±0.77 95=94.4±0.81 100=99.4±0.85
      105=104.4±0.87 110=109.4±0.91 115=114.4±0.94 120=119.4±0.98 125=124.4±1.01 130=129.4±1.05 135=134.4±1.08
      140=139.4±1.12 145=144.4±1.16`,
  },
];
