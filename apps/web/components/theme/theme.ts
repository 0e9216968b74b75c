export type Theme = 'system' | 'day' | 'night';

const place = 'pullbook-theme';

/** Sets the remembered theme before the first paint, so that a dark room stays dark. */
export const themeScript = `try{var t=localStorage.getItem('${place}');if(t==='day'||t==='night')document.documentElement.dataset.theme=t}catch(e){document.documentElement.dataset.theme=''}`;

/** The theme that this device remembers; `system` where nothing is remembered or nothing can be. */
export function readTheme(): Theme {
  const set = document.documentElement.dataset['theme'];
  return set === 'day' || set === 'night' ? set : 'system';
}

/** Shows the theme at once and remembers it on this device, where the browser allows that. */
export function setTheme(theme: Theme): void {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
  try {
    if (theme === 'system') localStorage.removeItem(place);
    else localStorage.setItem(place, theme);
  } catch (cause) {
    console.warn('this browser keeps no settings; the theme holds until the page is closed', cause);
  }
}
