import { Component, type ReactNode } from 'react'

interface GuardProps {
  readonly children: ReactNode
  readonly fallback: (why: string) => ReactNode
}

/** Keeps a failed load or a failed drawing of the solid from taking the sheet with it. React wants a class for this. */
export class SolidGuard extends Component<GuardProps, { readonly error: unknown }> {
  override state: { readonly error: unknown } = { error: undefined }

  static getDerivedStateFromError(error: unknown) {
    return { error }
  }

  override componentDidCatch(error: unknown) {
    console.error('The solid failed.', error)
  }

  override render() {
    const { error } = this.state
    if (error === undefined) return this.props.children
    const isLoad = error instanceof TypeError && /import|fetch|module/i.test(error.message)
    return this.props.fallback(
      isLoad
        ? 'Its part of the program could not be fetched; is the connection there?'
        : 'Something in the drawing failed.',
    )
  }
}
