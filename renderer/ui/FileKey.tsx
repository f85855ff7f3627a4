import './fileKey.css'

interface FileKeyProps {
  readonly name: string
  /** Kinds of file, as an input lists them. */
  readonly accept: string
  readonly onPick: (file: File | undefined) => Promise<void>
}

/** Picks a file; emptied after it, so that the same file can be picked again. */
export const FileKey = ({ name, accept, onPick }: FileKeyProps) => (
  <label className="key file-key">
    {name}
    <input
      type="file"
      accept={accept}
      onChange={(event) => {
        void onPick(event.target.files?.[0])
        event.target.value = ''
      }}
    />
  </label>
)
