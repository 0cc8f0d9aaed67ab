import { Box, Text, type TextProps } from 'ink';
import type { Look, Row } from './paint.ts';

/** Looks in the terminal's own sixteen colours; each one's meaning stands in the letters too. */
const LOOKS: Record<Look, Omit<TextProps, 'children'>> = {
  plain: {},
  strong: { bold: true },
  quiet: { dimColor: true },
  threat: { bold: true, color: 'red' },
  problem: { bold: true, color: 'yellow' },
  chosen: { inverse: true },
  struck: { dimColor: true, strikethrough: true },
};

/** Draws rows as they are: they were made to fit. */
export function Rows({ rows }: { rows: readonly Row[] }) {
  return (
    // Ink draws once at the old height before React hears of a resize: the width must follow by itself.
    <Box flexDirection="column" width="100%" height={rows.length}>
      {rows.map((row, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place on the screen
        <Text key={at} wrap="truncate">
          {row.length === 0
            ? ' '
            : row.map((each, place) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: likewise a span
                <Text key={place} {...LOOKS[each.look]}>
                  {each.text}
                </Text>
              ))}
        </Text>
      ))}
    </Box>
  );
}
