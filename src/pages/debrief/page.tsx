export const DebriefPage = () => <main>Debrief</main>;
