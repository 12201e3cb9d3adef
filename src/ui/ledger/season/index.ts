export { SeasonChapter } from './SeasonChapter.tsx'
