import { Component, type ErrorInfo, type ReactNode } from 'react'
import { Button } from 'react-aria-components'
import styles from './Notices.module.css'

interface Props {
  /** What broke, as the reader knows it: "The drawing". */
  readonly what: string
  readonly onSave: () => void
  readonly children: ReactNode
}

/** Keeps a fault of one part from taking the others with it; the plan itself lives in the store and is not touched. */
export class ErrorBoundary extends Component<Props, { readonly error: Error | undefined }> {
  override state = { error: undefined as Error | undefined }

  static getDerivedStateFromError(error: Error) {
    return { error }
  }

  override componentDidCatch(error: Error, info: ErrorInfo): void {
    console.error(error, info.componentStack)
  }

  override render(): ReactNode {
    const { error } = this.state
    if (!error) return this.props.children
    return (
      <div role="alert" className={styles['bar']} data-tone="problem">
        <p>
          {this.props.what} met a fault of the program. Your plan is kept; undo the last step and try again, or save a
          file.
          <span className={styles['hint']}> ({error.message})</span>
        </p>
        <Button className={styles['button'] ?? ''} onPress={() => this.setState({ error: undefined })}>
          Try again
        </Button>
        <Button className={styles['button'] ?? ''} onPress={this.props.onSave}>
          Save a file
        </Button>
      </div>
    )
  }
}
