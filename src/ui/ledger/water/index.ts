export { WaterChapter } from './WaterChapter.tsx'
