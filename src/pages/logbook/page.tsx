export const LogbookPage = () => <main>Logbook</main>;
