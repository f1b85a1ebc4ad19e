export declare const b: number;
