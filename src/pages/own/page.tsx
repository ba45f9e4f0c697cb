export const OwnPage = () => <main className="own">soon</main>;
