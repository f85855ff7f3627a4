import write from '../../../assets/texts/en/write.json' with { type: 'json' }
import { addTexts } from '../../ui/texts.tsx'

/** Words that only those need who write lessons, or take one in that is faulty: read with their parts. */
addTexts('write', write)
