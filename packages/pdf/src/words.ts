import type { Language } from '@slabwright/core';

/** What the sheet itself says; everything else comes from the paper through its voice. */
export interface SheetWords {
  page(page: number, pages: number): string;
  check(mark: string): string;
  floorPlan(name: string): string;
  section: string;
  blank: string;
  formula: string;
  outside: string;
  source: string;
  typed: string;
}

const EN: SheetWords = {
  page: (page, pages) => `page ${page} of ${pages}`,
  check: (mark) => `check ${mark}`,
  floorPlan: (name) => `Plan of the floor, drawn to scale: ${name}`,
  section: 'Cut through the floor',
  blank: 'to be filled in',
  formula: 'formula',
  outside: 'outside its range',
  source: 'source',
  typed: 'typed',
};

const ES: SheetWords = {
  page: (page, pages) => `página ${page} de ${pages}`,
  check: (mark) => `control ${mark}`,
  floorPlan: (name) => `Plano del piso a escala: ${name}`,
  section: 'Corte del piso',
  blank: 'por llenar',
  formula: 'fórmula',
  outside: 'fuera de su rango',
  source: 'fuente',
  typed: 'escrito',
};

export const sheetWords = (language: Language): SheetWords => (language === 'es' ? ES : EN);
