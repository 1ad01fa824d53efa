/** How this device shows the screens. */
import { chooseTheme, type Theme, themes, useTheme } from '../use-theme.ts';

const words: Readonly<Record<Theme, string>> = {
  'as the device': 'as the device',
  light: 'light',
  dark: 'dark',
  bench: 'bench: strong and large',
};

export function ThemeSwitch() {
  const theme = useTheme();
  return (
    <span className="switch">
      <label htmlFor="theme">Screen</label>
      <select
        id="theme"
        value={theme}
        onChange={(e) => chooseTheme(themes.find((one) => one === e.target.value) ?? 'as the device')}
      >
        {themes.map((one) => (
          <option key={one} value={one}>
            {words[one]}
          </option>
        ))}
      </select>
    </span>
  );
}
