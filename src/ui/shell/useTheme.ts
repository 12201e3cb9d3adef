import { useEffect } from 'react'
import { useApp } from '../context.tsx'

/** Puts the chosen theme on the page's root; `system` follows the device. Paper is always light. */
export function useTheme(): void {
  const theme = useApp((state) => state.settings.theme)
  useEffect(() => {
    const dark = window.matchMedia('(prefers-color-scheme: dark)')
    const printing = window.matchMedia('print')
    const apply = () => {
      const isDark = !printing.matches && (theme === 'dark' || (theme === 'system' && dark.matches))
      document.documentElement.dataset['theme'] = isDark ? 'dark' : 'light'
    }
    apply()
    dark.addEventListener('change', apply)
    printing.addEventListener('change', apply)
    return () => {
      dark.removeEventListener('change', apply)
      printing.removeEventListener('change', apply)
    }
  }, [theme])
}
