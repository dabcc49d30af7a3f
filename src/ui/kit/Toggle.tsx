/** A choice that is on or off, as in the foot. */
export function Toggle(props: {
  readonly name: string;
  readonly isOn: boolean;
  readonly onToggle: () => void;
}) {
  return (
    <button type="button" aria-pressed={props.isOn} onClick={props.onToggle}>
      {props.name}
    </button>
  );
}
