export { LevelSlider } from './LevelSlider.tsx'
export { SolidView, type SolidViewProps } from './SolidView.tsx'
