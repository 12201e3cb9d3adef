import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useApp } from '../context.tsx'
import { Button } from '../fields/index.ts'
import { LevelSlider } from './LevelSlider.tsx'
import { SolidView } from './SolidView.tsx'
import styles from './solid.module.css'

interface SolidWindowProps {
  readonly bodyId: string
  readonly onClose: () => void
}

/** The solid over the whole window, with its level. */
export function SolidWindow({ bodyId, onClose }: SolidWindowProps) {
  // The plan's own name; of several waters each has its own.
  const name = useApp(({ spec: { name: own, bodies } }) =>
    bodies.length > 1 ? (bodies.find((body) => body.id === bodyId)?.name ?? '') : own,
  )
  return (
    <ModalOverlay
      className={styles['overlay'] ?? ''}
      isOpen
      isDismissable
      onOpenChange={(isOpen) => {
        if (!isOpen) onClose()
      }}
    >
      <Modal className={styles['window'] ?? ''}>
        <Dialog className={styles['dialog'] ?? ''}>
          <div className={styles['head']}>
            <Heading slot="title">{name === '' ? 'Solid' : `${name} as a solid`}</Heading>
            <Button onPress={onClose}>Close</Button>
          </div>
          <SolidView bodyId={bodyId} large />
          <div className={styles['foot']}>
            <LevelSlider bodyId={bodyId} />
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
