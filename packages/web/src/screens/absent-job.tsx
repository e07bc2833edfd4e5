import { Link } from 'wouter';
import { words } from '../words.ts';
import { Wordmark } from './header.tsx';

export function AbsentJob() {
  return (
    <main className="page">
      <header>
        <Wordmark />
      </header>
      <section className="about">
        <h1>{words.absent.title}</h1>
        <p>{words.absent.text}</p>
        <Link className="press" href="/">
          {words.allJobs}
        </Link>
      </section>
    </main>
  );
}
