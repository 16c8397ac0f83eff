import type { CategoryMode, Provenance, TypicalDraw } from '../../../core/catalogue/category.ts'
import { builder } from '../builder.ts'
import { type CategoryNode, loadCategoryNode, nameOfCategoryNode } from '../categoryNode.ts'
import { EXPECTED_LENGTH } from '../limits.ts'
import { KeepPoweredType, RangeType } from './common.ts'
import { CatalogueLayerEnum, GroupEnum, ModeEnum, ProvenanceKindEnum } from './enums.ts'

const ProvenanceType = builder.objectRef<Provenance>('Provenance').implement({
  description: 'Where a figure of the catalogue comes from.',
  fields: (t) => ({
    kind: t.expose('kind', {
      type: ProvenanceKindEnum,
      description: 'Invented, published, or from readings.',
    }),
    citation: t.exposeString('citation', {
      nullable: true,
      description: 'Publication, where the figure is published.',
    }),
    n: t.exposeInt('n', {
      nullable: true,
      description: 'Number of readings, where the figure is from readings.',
    }),
  }),
})

export const TypicalDrawType = builder.objectRef<TypicalDraw>('TypicalDraw').implement({
  description:
    'What devices of a category draw in one mode: 5th, 50th and 95th percentile over devices in use.',
  fields: (t) => ({
    yearFrom: t.exposeInt('yearFrom', {
      nullable: true,
      description: 'First year of manufacture; null is open.',
    }),
    yearTo: t.exposeInt('yearTo', { nullable: true, description: 'Last year of manufacture; null is open.' }),
    lowW: t.exposeFloat('lowW', { description: '5th percentile, W.' }),
    typicalW: t.exposeFloat('typicalW', { description: '50th percentile, W.' }),
    highW: t.exposeFloat('highW', { description: '95th percentile, W.' }),
    provenance: t.expose('provenance', { type: ProvenanceType, description: 'Where the figures come from.' }),
  }),
})

const CategoryModeType = builder.objectRef<CategoryMode>('CategoryMode').implement({
  description: 'A low-power mode that devices of a category have.',
  fields: (t) => ({
    mode: t.expose('mode', { type: ModeEnum, description: 'The mode.' }),
    defaultHoursPerWeek: t.exposeFloat('defaultHoursPerWeek', {
      description: 'Hours a week (h) in this mode where a request names none.',
    }),
    draws: t.field({
      type: [TypicalDrawType],
      description: 'Typical draws by years of manufacture.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.draws },
      resolve: ({ draws }) => draws,
    }),
  }),
})

export const CategoryType = builder.node(builder.objectRef<CategoryNode>('Category'), {
  description: 'A kind of device in the catalogue.',
  id: {
    description:
      'Opaque name of the category, unique in the whole service. That of a category read at named revisions names them too.',
    resolve: nameOfCategoryNode,
  },
  loadOne: (name, { deps, sender }) => loadCategoryNode(deps, sender, name),
  fields: (t) => ({
    code: t.string({ description: 'Stable name in kebab-case.', resolve: ({ category }) => category.code }),
    name: t.string({ description: 'Name in plain words.', resolve: ({ category }) => category.name }),
    group: t.field({
      type: GroupEnum,
      description: 'Part of the household.',
      resolve: ({ category }) => category.group,
    }),
    aliases: t.stringList({
      description: 'Other names that the category is found by.',
      complexity: 1,
      resolve: ({ category }) => category.aliases,
    }),
    defaultQuantity: t.int({
      description: 'Number of devices where a request names none.',
      resolve: ({ category }) => category.defaultQuantity,
    }),
    retired: t.boolean({
      description: 'True where the category is kept for old inventories only.',
      resolve: ({ category }) => category.retired,
    }),
    sampleData: t.boolean({
      description: 'True where any figure of the category is invented sample data.',
      resolve: ({ category }) => category.sampleData,
    }),
    keepPowered: t.field({
      type: KeepPoweredType,
      nullable: true,
      description: 'Why devices of this category must stay powered; null where they need not.',
      resolve: ({ category }) => category.keepPowered,
    }),
    powerFactor: t.field({
      type: RangeType,
      description: 'Power factor (0 to 1, no unit) where none was read.',
      resolve: ({ category }) => category.powerFactor,
    }),
    modes: t.field({
      type: [CategoryModeType],
      description: 'The low-power modes that such devices have.',
      complexity: { field: 1, multiplier: EXPECTED_LENGTH.modes },
      resolve: ({ category }) => category.modes,
    }),
    changedInRevision: t.exposeInt('changedIn', {
      description:
        'Revision that gave the category this state, whatever was edited elsewhere since; `basedOn` of an edit. Of the catalogue, or, where `layer` is ORGANISATION, of the own figures.',
    }),
    layer: t.field({
      type: CatalogueLayerEnum,
      description: 'Whose category it is.',
      resolve: ({ category }) => category.layer,
    }),
    catalogueRevision: t.exposeInt('catalogueRevision', {
      description: 'Catalogue revision that these figures were read from.',
    }),
    overlayRevision: t.exposeInt('overlayRevision', {
      description:
        "Revision of your organisation's own figures that was read over it; 0 where there was none.",
    }),
  }),
})
