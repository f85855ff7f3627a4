import faults from '../../assets/texts/en/faults.json' with { type: 'json' }
import { addTexts } from '../ui/texts.tsx'

addTexts('faults', faults)
