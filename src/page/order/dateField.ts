// A field for a date: typed as the call takes it, or picked.
import { h, type ComponentChild, type TargetedEvent } from "preact";
import { TextField, type TextFieldProps } from "./textField.ts";

type DateFieldProps = Omit<TextFieldProps, "list">;

export function DateField(props: DateFieldProps): ComponentChild {
  const { id, label, value, keep } = props;
  const isDate = /^\d{4}-\d\d-\d\d \d\d:\d\d$/u.test(value);
  return h(
    "div",
    { class: "date" },
    h(TextField, props),
    h("input", {
      id: `${id}-pick`,
      type: "datetime-local",
      "aria-label": `Pick: ${label}`,
      value: isDate ? value.replace(" ", "T") : "",
      onChange: ({ currentTarget }: TargetedEvent<HTMLInputElement>) => {
        if (currentTarget.value !== "") keep(currentTarget.value.replace("T", " "));
      },
    }),
  );
}
