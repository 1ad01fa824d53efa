/** Digits for a thumb: what is pressed goes into the field that was touched last. */
interface Props {
  readonly press: (key: string) => void;
  readonly decimalSign: '.' | ',';
}

export function Keypad({ press, decimalSign }: Props) {
  const keys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '0', decimalSign];
  return (
    <fieldset className="keypad" aria-label="Digits">
      {keys.map((key) => (
        <button key={key} type="button" onClick={() => press(key)}>
          {key}
        </button>
      ))}
      <button type="button" onClick={() => press('back')} aria-label="Take the last digit away">
        ←
      </button>
    </fieldset>
  );
}
