/** Words that several notes share, for text in small letters. */

export const denial =
  /\b(?:never|not|no|without|avoid\w*|prevent\w*|stop\w*|cannot|none|nor|nothing|\w+n't|keep \w+ from)\b/u;

export const eyes =
  /\b(?:eyes?|eye[- ]?(?:protection|wear|sight)|goggles|(?:safety )?(?:glasses|spectacles)|face|visors?)\b/u;

export const counting =
  /\b(?:count\w*(?! (?:the |your |all |how )*(?:squares?|dots?|lines?|readings?|digits?|boxes|divisions?|field|many))|number(?:ed|s)? (?:of|in|back|out)|same number|all (?:of )?(?:them|the (?:pieces|pins|electrodes|parts))|hand\w* (?:\w+ ){0,3}back|give (?:\w+ ){0,3}back|return\w*|collect\w*|tall(?:y|ied)|account\w* for)\b/u;

export const ventilation =
  /\b(?:ventilat\w*|fume cupboards?|fume hoods?|extract(?:ion|ed|or)|open (?:the |a )?windows?|windows? (?:is |are )?open|fresh air|well[- ]aired|airflow|draught)\b/u;

export const handwashing =
  /\b(?:wash\w*|clean\w*|wipe\w*|rinse\w*|soap)\b.{0,40}\b(?:hands?|fingers?)\b|\b(?:hands?|fingers?)\b.{0,60}\b(?:wash\w*|clean\w*|wipe\w*|rinse\w*|soap)\b/u;

export const current =
  /\b(?:fuses?|fused|current[- ]limit\w*|limit(?:s|ed|ing)?|resistors?|cut-?outs?|trips?|overload\w*|circuit[- ]breakers?|protected against short|short[- ]circuit[- ]proof)\b/u;

export const supplyWords =
  /\b(?:cells?|batter(?:y|ies)|supply|supplies|power|packs?|circuit|switch|unit|source|current|on)\b/u;
