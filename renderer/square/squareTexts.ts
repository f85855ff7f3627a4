import square from '../../assets/texts/en/square.json' with { type: 'json' }
import { addTexts } from '../ui/texts.tsx'

addTexts('square', square)
