/** The usual cautions. They advise; the approved manual and the people named in it decide. */
export const safetyWords = {
  hot: 'HOT',
  hotMeasured: 'Treat the plate as hot: it burns.',
  hotUnmeasured: 'No valid reading: treat the plate as hot.',
  unattended: 'Lift the iron off, set it on its rest, and switch it off when you leave.',
  vapour: 'Solvent vapour burns. Keep wet cement and hot irons apart.',
  water: 'A mains iron and water never meet.',
  decides:
    'This measures and advises; it does not control the iron. Your covering process’s approved manual, local rules and a licensed mechanic or inspector decide.',
  startingPoints: 'Values shipped with this program are starting points.',
} as const;
