export { LevelSlider } from './LevelSlider.tsx'
export { SolidView } from './SolidView.tsx'
