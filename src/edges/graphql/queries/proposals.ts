import { z } from 'zod'
import { showProposal } from '../../../schemas/proposal.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { listProposals } from '../../../useCases/listProposals.ts'
import { readProposal } from '../../../useCases/readProposal.ts'
import { PROPOSAL_LIST } from '../../proposalLists.ts'
import { builder } from '../builder.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { ModeEnum } from '../types/enums.ts'
import { CatalogueProposalType } from '../types/proposal.ts'
import { withoutNulls } from '../withoutNulls.ts'

const SCOPE = 'Needs a key of the organisation that runs the service, with the scope catalogue:edit.'
const filterSchema = z.strictObject({ includeAnswered: z.boolean().default(false) })

builder.queryField('catalogueProposals', (t) =>
  t.connection(
    {
      type: CatalogueProposalType,
      nullable: true,
      description: `What the readings of all organisations say of the typical draws, once eight devices in eight households were read. ${SCOPE}`,
      args: {
        includeAnswered: t.arg.boolean({
          description:
            'Whether to list those, too, that were answered and wait for more readings; false by default.',
        }),
      },
      complexity: pageCost,
      resolve: async (_root, { includeAnswered, ...pageArguments }, { deps, sender }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls(pageArguments))
        const asked = readShape(filterSchema, withoutNulls({ includeAnswered }))
        const { filter, window } = listWindow(PROPOSAL_LIST, page, asked)
        const part = await listProposals(deps, sender, filter, window)
        return connectionOf(PROPOSAL_LIST, { ...part, items: part.items.map(showProposal) }, filter)
      },
    },
    { name: 'CatalogueProposalConnection', description: 'A page of proposals.' },
    { name: 'CatalogueProposalEdge', description: 'A proposal and its place in the list.' },
  ),
)

builder.queryField('catalogueProposal', (t) =>
  t.field({
    type: CatalogueProposalType,
    nullable: true,
    description: `What readings say of one typical draw; an error says so where there are too few. ${SCOPE}`,
    args: {
      category: t.arg.string({ required: true, description: 'Code of the category; not a name or alias.' }),
      mode: t.arg({ type: ModeEnum, required: true, description: 'The mode.' }),
      yearFrom: t.arg.int({
        description: 'First year of manufacture of the draw; left out where it is open.',
      }),
      yearTo: t.arg.int({ description: 'Last year of manufacture of the draw; left out where it is open.' }),
    },
    resolve: async (_root, { yearFrom = null, yearTo = null, ...rest }, { deps, sender }) => {
      return showProposal(await readProposal(deps, sender, { ...rest, yearFrom, yearTo }))
    },
  }),
)
