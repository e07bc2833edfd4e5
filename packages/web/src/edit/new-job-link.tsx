import { Link } from 'wouter';
import { words } from './words.ts';

export const NewJobLink = () => (
  <p>
    <Link className="press main" href="/new">
      {words.newJob}
    </Link>
  </p>
);
