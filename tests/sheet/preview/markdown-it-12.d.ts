/** The older markdown-it comes without types; what is used here has stayed the same. */
declare module 'markdown-it-12' {
  import type MarkdownIt from 'markdown-it';
  export default class OldMarkdownIt {
    constructor(options?: object);
    render: InstanceType<typeof MarkdownIt>['render'];
  }
}
