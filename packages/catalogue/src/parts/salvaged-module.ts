/** What holds for every class of salvaged modules. */
export const SALVAGED_MODULE =
  'Priced at 80 to 250 € per kWh, used. Health is the planning value for an untested module (common practice): measure. Cell resistance comes from 0.3 to 2 mΩ for each group of parallel cells. Currents are not class figures: take them from the cell sheet.'
