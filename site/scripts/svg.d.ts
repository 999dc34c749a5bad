// A drawing that a script imports is its text.
declare module "*.svg" {
  const text: string;
  export default text;
}
