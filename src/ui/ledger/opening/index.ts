export { OpeningChapter } from './OpeningChapter.tsx'
