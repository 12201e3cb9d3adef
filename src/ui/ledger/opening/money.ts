/** A sum with two decimals and the owner's currency after it: "24.50 €". A figure as fine as a price tag, nothing converted. */
export function formatMoney(sum: number, currency: string | undefined): string {
  const figure = new Intl.NumberFormat('en-GB', { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(sum)
  return currency ? `${figure}\u00a0${currency}` : figure
}
