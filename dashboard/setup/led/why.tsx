interface WhyProps {
  readonly text: string;
  readonly testId?: string;
}

/** Why the last step came to nothing, beside what was pressed. */
export const Why = ({ text, testId = 'calibration-why' }: WhyProps) => (
  <p class="field-error" role="status" data-testid={testId}>
    {text}
  </p>
);
