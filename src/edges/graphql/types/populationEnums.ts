import type { StockItemShare } from '../../../core/population/stock.ts'
import type { StandardErrorForm } from '../../../core/population/survey.ts'
import { enumOf } from '../enumOf.ts'

export const StandardErrorFormEnum = enumOf<StandardErrorForm>(
  'StandardErrorForm',
  'Form of the standard error of a ratio estimate.',
  {
    'with-mean-factor': 'Times known over estimated total of the auxiliary quantity.',
    'without-mean-factor': 'Of the residuals alone.',
  },
)

export const UncertaintyOriginEnum = enumOf<StockItemShare['meanDrawUncertaintyFrom']>(
  'UncertaintyOrigin',
  "Where the uncertainty of a mean draw is from: the request, or the service's own assumption by provenance.",
  {
    request: 'The request.',
    sample: 'A sample draw of the catalogue.',
    published: 'A published draw of the catalogue.',
    programme: "A draw of the catalogue from a programme's readings.",
    'given-draw': 'A draw that the request brought along.',
  },
)
