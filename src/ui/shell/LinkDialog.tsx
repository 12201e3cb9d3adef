import { Button, Dialog, Heading, Input, Label, Modal, ModalOverlay, TextField } from 'react-aria-components'
import { useApp, useAppStore } from '../context.tsx'
import styles from './LinkDialog.module.css'

/** The link in full, for copying by hand, with what it carries and what not. */
export function LinkDialog() {
  const store = useAppStore()
  const link = useApp((state) => state.sharedLink)
  return (
    <ModalOverlay
      className={styles['overlay'] ?? ''}
      isOpen={link !== undefined}
      isDismissable
      onOpenChange={(isOpen) => {
        if (!isOpen) store.getState().closeLink()
      }}
    >
      <Modal className={styles['modal'] ?? ''}>
        <Dialog className={styles['dialog'] ?? ''}>
          <Heading slot="title">The link to this plan</Heading>
          <p>
            The whole plan is inside the link: drawing, readings, log. Anyone who has it can see all of that; no server
            keeps a copy. It shows the plan as it is now and does not follow later changes.
          </p>
          <TextField value={link ?? ''} isReadOnly className={styles['field'] ?? ''}>
            <Label>Link</Label>
            <Input onFocus={(event) => event.currentTarget.select()} />
          </TextField>
          <p className={styles['size']}>{(link ?? '').length} characters</p>
          <Button className={styles['close'] ?? ''} onPress={() => store.getState().closeLink()}>
            Done
          </Button>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
