/** An event that the program may prevent, and whether it did. */
export const preventable = () => {
  const event = {
    isPrevented: false,
    preventDefault: () => {
      event.isPrevented = true
    },
  }
  return event
}
