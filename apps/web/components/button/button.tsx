import Link from 'next/link';
import type { ButtonHTMLAttributes, ReactNode } from 'react';
import styles from './button.module.css';

type Kind = 'act' | 'plain' | 'quiet';

interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  readonly kind?: Kind;
  readonly big?: boolean;
  /** While true the button says so and takes no second press. */
  readonly busy?: boolean;
}

const kindLooks: Readonly<Record<Kind, string | undefined>> = {
  act: styles.act,
  plain: '',
  quiet: styles.quiet,
};
const look = (kind: Kind, big: boolean) => `${styles.button} ${kindLooks[kind]} ${big ? styles.big : ''}`;

/** A button; `act` is the one thing to do on a screen. */
export function Button({ kind = 'plain', big = false, busy = false, className = '', ...rest }: ButtonProps) {
  return (
    <button
      type="button"
      {...rest}
      aria-busy={busy}
      disabled={busy || rest.disabled === true}
      className={`${look(kind, big)} ${className}`}
    />
  );
}

interface ButtonLinkProps {
  readonly href: string;
  readonly kind?: Kind;
  readonly big?: boolean;
  /** For papers and pages of the server: a plain link, in a tab of its own. */
  readonly outside?: boolean;
  readonly children: ReactNode;
}

/** A link that looks like a button. */
export function ButtonLink({
  href,
  kind = 'plain',
  big = false,
  outside = false,
  children,
}: ButtonLinkProps) {
  if (outside) {
    return (
      <a className={look(kind, big)} href={href} target="_blank" rel="noreferrer">
        {children}
      </a>
    );
  }
  return (
    <Link className={look(kind, big)} href={href}>
      {children}
    </Link>
  );
}
