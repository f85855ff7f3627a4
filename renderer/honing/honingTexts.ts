import honing from '../../assets/texts/en/honing.json' with { type: 'json' }
import { addTexts } from '../ui/texts.tsx'

addTexts('honing', honing)
